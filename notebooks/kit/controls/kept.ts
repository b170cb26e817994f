import type {Brief} from "../../../lib/balance/brief/brief.ts";
import {keep, recall} from "../words/address.ts";
import {changed, type Control, control} from "./control.ts";
import type {WeighedMix} from "../page/mixes.ts";
import {sharesFrom, sharesText} from "../words/address-format.ts";

/** So many mixes stand side by side, beside the one looked at: each needs a colour and a sign of its own. */
export const MOST_KEPT = 4;

/** A mix that the cook keeps: the share of the batch of each ingredient, in the order of the brief. */
export interface KeptMix {
  readonly name: string;
  readonly shares: readonly number[];
}

/** The mixes kept for comparison; the address keeps them too. */
export interface Kept extends Control<number> {
  of(brief: Brief): KeptMix[];
  add(mix: WeighedMix): void;
  /** Drops the nth. */
  drop(n: number): void;
  clear(): void;
}

/** No mix, or those of the address: each as the per cent of each ingredient. */
export function keptMixes(): Kept {
  let mixes = recall("kept")
    .map(sharesFrom)
    .filter((shares) => shares !== undefined)
    .slice(0, MOST_KEPT);
  const element = document.createElement("div");
  const write = () => {
    keep("kept", mixes.map(sharesText));
    changed(element);
  };
  return Object.assign(
    control(element, () => mixes.length),
    {
      // Those of another brief are not of this one: they say nothing here.
      of: ({ingredients}: Brief) =>
        mixes
          .filter((shares) => shares.length === ingredients.length)
          .map((shares, i) => ({name: "ABCD"[i]!, shares})),
      add({amounts}: WeighedMix) {
        const shares = amounts.map(({percent}) => percent / 100);
        const same = (other: readonly number[]) =>
          other.every((share, j) => Math.abs(share - shares[j]!) < 1e-6);
        if (mixes.length >= MOST_KEPT || mixes.some(same)) return;
        mixes = [...mixes, shares];
        write();
      },
      drop(n: number) {
        mixes = mixes.filter((_, i) => i !== n);
        write();
      },
      clear() {
        if (!mixes.length) return;
        mixes = [];
        write();
      },
    },
  );
}
