import {expectFunction, expectOptions, expectRecord} from "./shape.ts";
import {InputError} from "./errors.ts";

/** Progress of a long run. */
export interface Progress {
  /** Linear programs solved so far. */
  readonly solved: number;
  /** Number of linear programs in all; absent where it is not known before the end. */
  readonly of?: number;
}

/** A long run that can be stopped between its steps and gives its result at the end. */
export type Steps<T> = Generator<Progress, T, undefined>;

/** A signal that can stop a long run: an `AbortSignal` fits. */
export interface Stoppable {
  /** Throws once the run is to stop. */
  readonly throwIfAborted: () => void;
}

/**
 * Refuses anything but a signal that can stop a run.
 *
 * @throws InputError naming `signal`
 */
export function expectStoppable(signal: Stoppable): void {
  expectRecord(signal, "signal", "give an AbortSignal");
  expectFunction(signal.throwIfAborted, "signal.throwIfAborted");
}

/** Options of a long run. */
export interface ChunkOptions {
  /** Ends the run between two steps. */
  readonly signal?: Stoppable;
  /** Called after each chunk. */
  readonly onProgress?: (progress: Progress) => void;
  /**
   * Awaited between two chunks, so that other work gets its turn: in a page
   * `() => new Promise((done) => setTimeout(done))`. By default nothing is waited for.
   */
  readonly pause?: () => Promise<unknown>;
  /** Steps per chunk, at least 1; by default 16, some milliseconds of work. */
  readonly size?: number;
}

/** The same steps with their progress: the number done so far. */
export function* counted<T>(steps: Generator<void, T>): Steps<T> {
  for (let solved = 1; ; solved++) {
    const step = steps.next();
    if (step.done) return step.value;
    yield {solved};
  }
}

/** Runs all steps at once. */
export function finish<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Runs the steps in chunks with a pause after each, so that a page keeps answering and the run can be cancelled.
 *
 * @throws InputError for a chunk of less than one whole step, and for an option of another kind
 * @throws the signal's reason (for an `AbortSignal` an `AbortError`) when it is aborted, before the next chunk
 *
 * @example
 * ```ts
 * const brief = {ingredients: ["whole milk", "sucrose"], targets: {sugars: {equal: 12}}};
 * const {status} = await inChunks(balanceSteps(brief, {pantry: includedPantry()}), {
 *   pause: () => new Promise((done) => setTimeout(done)),
 * });
 * status; // => "optimal"
 * ```
 */
export async function inChunks<T>(steps: Steps<T>, options: ChunkOptions = {}): Promise<T> {
  expectOptions(options, ["signal", "onProgress", "pause", "size"]);
  const given: unknown = steps;
  if (typeof given !== "object" || given === null || !("next" in given) || typeof given.next !== "function")
    throw new InputError("steps", "no run in steps", given, "give what a function …Steps returned", {
      code: "wrong type",
    });
  const {signal, onProgress, pause, size = 16} = options;
  if (signal !== undefined) expectStoppable(signal);
  if (onProgress !== undefined) expectFunction(onProgress, "onProgress");
  if (pause !== undefined) expectFunction(pause, "pause");
  if (!(Number.isInteger(size) && size >= 1)) {
    throw new InputError("size", "not a number of steps", size, "give a whole number of at least 1");
  }
  for (;;) {
    signal?.throwIfAborted();
    let progress: Progress | undefined;
    for (let i = 0; i < size; i++) {
      const step = steps.next();
      if (step.done) return step.value;
      progress = step.value;
    }
    if (progress) onProgress?.(progress);
    await pause?.();
  }
}
