import {BaseSequencer, type TestSpecification} from "vitest/node";

/** Projects in the order of their turn: the longest files first, so that the short ones fill the end. */
const TURNS = ["notebooks", "library", "spies"];

/**
 * One project after the other. A worker keeps what it has loaded (the library, the browser and what that has loaded) only while its
 * next file is of the same project; by length alone they alternate, and each change loads it all anew.
 */
export class ByProject extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted.toSorted((a, b) => TURNS.indexOf(a.project.name) - TURNS.indexOf(b.project.name));
  }
}
