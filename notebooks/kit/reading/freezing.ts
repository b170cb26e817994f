import {changed} from "../controls/control.ts";
import type {RecipeBox} from "../controls/recipe-box.ts";
import type {Slider} from "../controls/slider.ts";
import type {OpenRecipe} from "../keep/open-recipe.ts";

/** The sliders of the freezer and of the air, within their panel. */
interface FreezingSliders {
  readonly panel: HTMLElement;
  readonly freezer: Slider;
  readonly overrun: Slider;
}

/**
 * Keeps the freezer and the air with the open recipe: what the sliders say goes into it, and what it says comes back to them.
 *
 * @param said overrun that the text itself says, %
 */
export function followFreezing(
  open: OpenRecipe,
  box: RecipeBox,
  {panel, freezer, overrun}: FreezingSliders,
  said: () => number | undefined,
): void {
  const take = () => {
    if (!box.own) return;
    const own = open.now!;
    const wanted: (readonly [Slider, number | undefined])[] = [
      [freezer, own.freezer],
      [overrun, said() ?? own.overrun],
    ];
    const moved = wanted.filter(([slider, value]) => value !== undefined && value !== slider.value);
    for (const [slider, value] of moved) slider.set(value!);
    if (moved.length) changed(panel);
  };
  panel.addEventListener("input", () => {
    const values = {freezer: freezer.value, overrun: overrun.value};
    if (box.own) open.edit(values, "typed");
    else if (open.visitor) open.show({...open.visitor, ...values});
  });
  open.follow(take);
  take();
}
