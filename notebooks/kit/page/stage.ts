/** Time that a hand must rest before what is out of sight is drawn, ms. */
const REST = 250;

interface Place<S> {
  readonly element: HTMLElement;
  readonly draw: (scene: S) => Element | undefined;
  inSight: boolean;
  /** The scene that stands there. */
  drawn?: S;
}

/** Places on a page that all show one scene. */
export interface Stage<S> {
  /** A place to put on the page; `draw` fills it anew for each scene, and leaves it empty where it returns nothing. */
  place(draw: (scene: S) => Element | undefined): HTMLElement;
  /** Makes the scene now, and again whenever one of the controls changes. */
  follow(controls: readonly HTMLElement[], make: () => S): void;
}

/**
 * A stage on which only what is in sight is drawn at once, so that a slider stays light in the hand; the rest follows
 * when the hand rests, when it scrolls into view, or before the page is printed.
 */
export function newStage<S>(): Stage<S> {
  const places = new Map<Element, Place<S>>();
  let current: S | undefined;
  let listening = new AbortController();
  let timer: ReturnType<typeof setTimeout> | undefined;

  const draw = (place: Place<S>) => {
    if (current === undefined || place.drawn === current) return;
    place.drawn = current;
    const content = place.draw(current);
    place.element.replaceChildren(...(content ? [content] : []));
  };
  const drawAll = () => places.forEach(draw);
  const watcher = new IntersectionObserver((entries) => {
    for (const {target, isIntersecting} of entries) {
      const place = places.get(target)!;
      place.inSight = isIntersecting;
      if (isIntersecting) draw(place);
    }
  });
  addEventListener("beforeprint", drawAll);

  return {
    place(make) {
      const element = document.createElement("div");
      element.dataset.side = "answer";
      const place: Place<S> = {element, draw: make, inSight: true};
      places.set(element, place);
      watcher.observe(element);
      draw(place);
      return element;
    },
    // Straight from the control's event, not through the notebook's own dataflow, which would wait for the next frame.
    follow(controls, make) {
      const show = () => {
        current = make();
        for (const place of places.values()) if (place.inSight) draw(place);
        clearTimeout(timer);
        timer = setTimeout(drawAll, REST);
      };
      listening.abort();
      listening = new AbortController();
      for (const element of controls) element.addEventListener("input", show, {signal: listening.signal});
      show();
    },
  };
}
