import {describe, expect, test} from "vitest";
import {within} from "../support/within.ts";
import {readTables} from "../../datasets/published/read-tables.ts";
import {validationRows} from "../../datasets/published/rows.ts";

const rows = validationRows(readTables());

describe("published figures of freezing", () => {
  test("are at least 250, from at least 8 sources", () => {
    expect(rows.length).toBeGreaterThanOrEqual(250);
    expect(new Set(rows.map(({source}) => source)).size).toBeGreaterThanOrEqual(8);
  });

  test.each([...new Set(rows.map(({group}) => group))])("%s: each is met within its tolerance", (group) => {
    for (const row of rows.filter((d) => d.group === group)) {
      within(row.computed, row.published, row.tolerance, `${row.what} (${row.source})`);
    }
  });
});
