import {html} from "htl";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {keep} from "../words/address.ts";
import {type Control, control} from "../controls/control.ts";
import type {Attempt} from "../words/mistakes.ts";
import {offeredTargets, targetsOf, targetWindows, type TargetsControl} from "../controls/targets.ts";

/** Wishes to be changed: windows for the targets of whichever brief is loaded. */
export function wishes(
  brief: Control<Attempt<BriefInput>>,
): Control<(freezer: number) => BriefInput["targets"]> {
  const element = html`<div></div>`;
  let windows: TargetsControl | undefined;
  const show = () => {
    const loaded = "value" in brief.value ? brief.value.value : undefined;
    windows = targetWindows(loaded?.targets ?? {}, loaded?.freezer ?? -18);
    element.replaceChildren(windows);
  };
  brief.addEventListener("input", () => {
    for (const key of offeredTargets()) keep(key, []);
    show();
  });
  show();
  return control(element, () => (freezer: number) => {
    const loaded = ("value" in brief.value && brief.value.value.targets) || {};
    // What has no window stays as the brief has it.
    const others = Object.fromEntries(
      Object.entries(loaded).filter(([name]) => !offeredTargets().includes(name)),
    );
    return {...others, ...targetsOf(windows?.value ?? {}, freezer)};
  });
}
