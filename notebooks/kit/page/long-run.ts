import {html} from "htl";
import {inChunks, type Steps} from "../../../lib/core/in-chunks.ts";

/** A run that is shorter than this is done before the next picture is painted, ms. */
const AT_ONCE = 20;

/** Time that a run works before the page gets its turn, ms. */
const TURN = 8;

/** A long run, and what becomes of it. */
interface Task<T> {
  /** Words that the cook reads while it runs. */
  readonly words: string;
  readonly steps: Steps<T>;
  readonly done: (result: T) => void;
}

/** A place where long runs show how far they are, with a button that stops them. */
export interface LongRun {
  readonly element: HTMLElement;
  /** Starts a run; one that is still going is stopped. What the first steps throw is thrown here. */
  start<T>(task: Task<T>): void;
  stop(): void;
}

/** One run at a time; the page keeps answering meanwhile. */
export function longRun(): LongRun {
  const words = html`<span></span>`;
  const bar = html`<progress></progress>` as HTMLProgressElement;
  const button = html`<button type="button"></button>` as HTMLButtonElement;
  const element = html`<div class="run" data-side="answer" hidden>${words}${bar}${button}</div>`;
  let current: AbortController | undefined;
  let again: (() => void) | undefined;

  const stop = () => {
    current?.abort();
    current = undefined;
    element.hidden = true;
  };
  const start = <T>(task: Task<T>) => {
    stop();
    // A stopped run goes on from the step where it stood.
    const goOn = () => start(task);
    again = goOn;
    const own = new AbortController();
    const {steps} = task;
    const began = performance.now();
    while (performance.now() - began < AT_ONCE) {
      const step = steps.next();
      if (!step.done) continue;
      again = undefined;
      task.done(step.value);
      return;
    }
    current = own;
    element.hidden = false;
    words.textContent = task.words;
    bar.hidden = false;
    bar.removeAttribute("value");
    button.textContent = "Stop";
    inChunks(steps, {
      signal: own.signal,
      size: 1,
      pause: breather(),
      onProgress: ({solved, of}) => {
        if (of) bar.value = Math.min(1, solved / of);
      },
    }).then(
      (result) => {
        const end = () => {
          again = undefined;
          stop();
          task.done(result);
        };
        if (!own.signal.aborted) end();
        // Stopped at its last step: there is nothing left to go on with but its end.
        else if (again === goOn) again = end;
      },
      (error: unknown) => {
        if (!own.signal.aborted) throw error;
      },
    );
  };
  button.addEventListener("click", () => {
    if (!current) {
      again?.();
      return;
    }
    current.abort();
    current = undefined;
    words.textContent = "Stopped. What you see is from before.";
    bar.hidden = true;
    button.textContent = "Go on";
  });
  return {element, stop, start};
}

/** Lets the page have its turn, but not more often than need be. */
function breather(): () => Promise<void> {
  let last = performance.now();
  return async () => {
    if (performance.now() - last < TURN) return;
    await new Promise((resolve) => setTimeout(resolve));
    last = performance.now();
  };
}
