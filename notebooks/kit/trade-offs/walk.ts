import {html} from "htl";
import {MOST_KEPT, type Kept} from "../controls/kept.ts";
import {keyOf, styleOf} from "../page/mixes.ts";
import {valueText} from "./axes.ts";
import type {Marker} from "./marker.ts";
import {lookedAt, type TradeScene} from "./scene.ts";

/** A slider along the front, a button that keeps the mix looked at, and the mixes kept. */
export interface TradeWalk {
  readonly element: HTMLElement;
  show(scene: TradeScene | undefined): void;
  /** Keeps the mix looked at. */
  keep(): void;
}

/** Actions on the point looked at. */
export function tradeWalk(marker: Marker, kept: Kept): TradeWalk {
  const track = html`<input type="range" id="along" min="0" step="1" />` as HTMLInputElement;
  const ends = html`<p class="ends"></p>`;
  const button = html`<button type="button">Keep this one</button>` as HTMLButtonElement;
  const list = html`<ul class="kept"></ul>`;
  const element = html`<div class="walk" hidden>
    <label for="along">Along the bold line</label>
    ${track}${ends}
    <div class="tools">${button}${list}</div>
  </div>`;
  let scene: TradeScene | undefined;

  const keep = () => {
    if (scene) kept.add(lookedAt(scene, marker.value).mix);
  };
  button.addEventListener("click", keep);
  track.addEventListener("input", (event) => {
    event.stopPropagation();
    marker.set({at: "front", index: track.valueAsNumber});
  });
  track.addEventListener("keydown", (event) => {
    if (event.key === "Enter") keep();
  });
  list.addEventListener("click", (event) => {
    const drop = (event.target as HTMLElement).closest<HTMLElement>("[data-drop]");
    if (!drop) return;
    kept.drop(Number(drop.dataset.drop));
    button.focus();
  });
  const told = new WeakMap<TradeScene, number>();
  return {
    element,
    keep,
    show(next) {
      scene = next;
      element.hidden = !next;
      if (!next) return;
      const {front, x, y, brief} = next;
      const {mark} = lookedAt(next, marker.value);
      track.max = String(front.points.length - 1);
      track.disabled = front.points.length < 2;
      if (mark.at === "front") track.valueAsNumber = mark.index;
      const looked = lookedAt(next, marker.value);
      track.setAttribute("aria-valuetext", `${valueText(x, looked.x)}, ${valueText(y, looked.y)}`);
      const mixes = kept.of(brief);
      button.disabled = mixes.length >= MOST_KEPT;
      button.textContent = button.disabled ? `${MOST_KEPT} are kept: drop one first` : "Keep this one";
      if (told.get(next) === kept.value && list.childElementCount === mixes.length) return;
      told.set(next, kept.value);
      const [first, last] = [front.points[0]!, front.points.at(-1)!];
      ends.replaceChildren(
        html`<span>${valueText(x, first.x)}, ${valueText(y, first.y)}</span>`,
        html`<span>${valueText(x, last.x)}, ${valueText(y, last.y)}</span>`,
      );
      list.replaceChildren(
        ...mixes.map(
          ({name}, i) =>
            html`<li>
              ${keyOf(styleOf(i + 1))} ${name}<button
                type="button"
                data-drop=${i}
                aria-label=${`Drop ${name}`}
              >
                ×
              </button>
            </li>`,
        ),
      );
    },
  };
}
