import {seededRandom} from "../../lib/core/random.ts";
import type {LinearProgram, Row, Variable} from "../../lib/lp/program/program.ts";

/** A blend and one point that keeps all its limits. */
export interface Blend {
  readonly program: LinearProgram;
  readonly point: readonly number[];
}

/**
 * A random least-cost blend: `count` ingredients with the kinds of contents that mixes have (many zeros, some in traces), a batch,
 * and about 20 limits around a random recipe, some of them equations.
 */
export function blend(count: number, seed: number, batch = 1): Blend {
  const random = seededRandom(seed * 7919 + count * 104_729);
  const contents = Array.from({length: count}, () => randomContents(random));
  const shares = contents.map(() => (random() < 8 / count ? random() : 0));
  if (!shares.some((share) => share > 0)) shares[0] = 1;
  const total = shares.reduce((a, b) => a + b, 0);
  const point = shares.map((share) => (share / total) * batch);
  const variables = contents.map((_, j): Variable => {
    const cost = rounded(0.4 + random() ** 3 * 20, 2);
    const upper =
      random() < 0.3
        ? Math.max(point[j]! * (1 + random() / 2), rounded(random() * 0.4, 3) * batch)
        : Infinity;
    const lower = random() < 0.08 ? point[j]! * rounded(random(), 2) : 0;
    return {name: `x${j}`, cost, lower, upper};
  });
  const rows: Row[] = [{name: "batch", coefficients: contents.map(() => 1), lower: batch, upper: batch}];
  for (const [name, coefficientOf] of quantities(random)) {
    const coefficients = contents.map(coefficientOf);
    rows.push({name, coefficients, ...limitsAround(coefficients, point, batch, random)});
  }
  return {program: {variables, rows}, point};
}

/** Kinds of programs on which engines are known to fail: endless loops, wrong points, false conflicts. */
export const KINDS = [
  "blend",
  "maximised quantity",
  "zero cost",
  "few costs, of the wrong sign",
  "mixed signs of cost",
  "goals",
  "smallest largest miss",
  "free misses",
  "badly scaled",
  "narrow windows",
  "redundant equations",
  "rows repeated at other scales",
  "equal ingredients",
  "everything bounded",
  "infeasible",
  "nearly infeasible",
  "elastic",
] as const;

export type Kind = (typeof KINDS)[number];

/** The same problem in plain units, for an engine that does not scale: HiGHS is wrong on some of the badly scaled programs. */
export function plainlyScaled(
  kind: Kind,
  program: LinearProgram,
  count: number,
  seed: number,
): LinearProgram {
  if (kind !== "badly scaled") return program;
  return blend(count, seed, batchOf(randomFor(count, seed))).program;
}

function randomFor(count: number, seed: number): () => number {
  return seededRandom(seed * 31 + count * 7 + 5);
}

function batchOf(random: () => number): number {
  return random() < 0.5 ? 1 : 100;
}

/**
 * A random program of a kind; the same for the same arguments.
 *
 * @param maximum the largest objective of a program, from a solver that is not the one under test
 */
export function programOf(
  kind: Kind,
  count: number,
  seed: number,
  maximum: (program: LinearProgram) => number,
): LinearProgram {
  const random = randomFor(count, seed);
  const batch = batchOf(random);
  const {program, point} = blend(count, seed, batch);
  const {variables, rows} = program;
  const some = rows[1 + Math.floor(random() * (rows.length - 1))]!;
  const withCosts = (cost: (old: number, index: number) => number): LinearProgram => ({
    ...program,
    variables: variables.map((variable, j) => ({...variable, cost: cost(variable.cost, j)})),
  });
  switch (kind) {
    case "blend":
      return program;
    case "maximised quantity":
      return {...withCosts((_, j) => some.coefficients[j]!), sense: "maximise"};
    case "zero cost":
      return withCosts(() => 0);
    case "few costs, of the wrong sign":
      return withCosts(() => (random() < 0.2 ? -1 : 0));
    case "mixed signs of cost":
      return withCosts(() => rounded((random() - 0.5) * 10, 2));
    case "goals":
      return goals(program, point, random, false);
    case "free misses":
      return goals(program, point, random, true);
    case "smallest largest miss":
      return smallestLargestMiss(program, point, random);
    case "badly scaled":
      return badlyScaled(program, random);
    case "narrow windows":
      return {
        ...program,
        variables: variables.map((variable, j) => {
          if (random() < 0.5) return variable;
          const width = batch * 10 ** -(3 + Math.floor(random() * 5));
          return {
            ...variable,
            lower: Math.max(0, point[j]! - width * random()),
            upper: point[j]! + width * random(),
          };
        }),
      };
    case "redundant equations": {
      const fixed = rows.slice(1, 5).map((row) => withValue(row, valueOf(row, point)));
      const coefficients = variables.map((_, j) =>
        fixed.reduce((total, row) => total + row.coefficients[j]!, 0),
      );
      const sum = withValue(
        {name: "sum", coefficients},
        fixed.reduce((total, row) => total + row.lower!, 0),
      );
      return {...program, rows: [rows[0]!, ...fixed, ...rows.slice(5), sum]};
    }
    case "rows repeated at other scales":
      return {
        ...program,
        rows: [...rows, ...rows.slice(1, 6).map((row, k) => scaledRow(row, [100, 1000, 0.001, 3, 7][k]!))],
      };
    case "equal ingredients":
      return {
        variables: [...variables, ...variables].map((variable) => ({...variable, lower: 0, upper: Infinity})),
        rows: rows.map((row) => ({...row, coefficients: [...row.coefficients, ...row.coefficients]})),
      };
    case "everything bounded":
      return {
        ...program,
        variables: variables.map((v, j) => ({...v, upper: Math.max(point[j]! * 1.05, 0.02 * batch)})),
      };
    case "infeasible":
      return {...program, rows: [...rows, beyondReach(program, some, maximum, 0.1 + random())]};
    case "nearly infeasible": {
      const excess = (random() < 0.5 ? -1 : 1) * 10 ** -(2 + random() * 3);
      return {...program, rows: [...rows, beyondReach(program, some, maximum, excess)]};
    }
    case "elastic":
      return elastic({...program, rows: [...rows, beyondReach(program, some, maximum, random())]});
  }
}

/** A blend of at most `most` ingredients, each 0 or at least 0.5 % of the batch; with `units`, every other one is bought whole. */
export function wholeProgram(count: number, seed: number, most: number, units = false): LinearProgram {
  const {program} = blend(count, seed);
  const size = program.variables.map((_, j) => (units && j % 2 === 1 ? 0.02 : 1));
  const amounts = program.variables.map((v, j): Variable => ({
    ...v,
    lower: 0,
    upper: v.upper! / size[j]!,
    cost: v.cost * size[j]!,
    integer: size[j]! < 1,
  }));
  const used = amounts.map(({name}): Variable => ({name: `${name} used`, cost: 0, upper: 1, integer: true}));
  const zeros = amounts.map(() => 0);
  const link = (j: number, perUse: number) => {
    const coefficients = [...zeros, ...zeros];
    coefficients[j] = size[j]!;
    coefficients[count + j] = -perUse;
    return coefficients;
  };
  return {
    variables: [...amounts, ...used],
    rows: [
      ...program.rows.map((row, i) => ({
        ...(i === 0 ? row : widened(row, 0.02)),
        coefficients: [...row.coefficients.map((a, j) => a * size[j]!), ...zeros],
      })),
      ...program.variables.flatMap(({name, upper}, j): Row[] => [
        {name: `${name} at most`, coefficients: link(j, Math.min(upper!, 1)), upper: 0},
        {name: `${name} at least`, coefficients: link(j, 0.005), lower: 0},
      ]),
      {name: "count", coefficients: [...zeros, ...zeros.map(() => 1)], upper: most},
    ],
  };
}

/** The value of a row at a point. */
export function valueOf({coefficients}: Row, point: readonly number[]): number {
  return coefficients.reduce((total, a, j) => total + a * (point[j] ?? 0), 0);
}

/** Water, fat, milk solids, sugars, starch and a trace, per unit of ingredient; each ingredient has a few of them. */
function randomContents(random: () => number): number[] {
  const contents = Array.from({length: 6}, () => (random() < 0.45 ? random() : 0));
  if (random() < 0.1) contents[5]! += random() * 20;
  contents[5]! *= 0.02;
  const total = contents.reduce((a, b) => a + b, 0);
  return contents.map((share) => rounded(total > 1 ? share / total : share, 4));
}

/** About 20 linear quantities of a mix, with the weights and differences that sweetness, solids and ratios bring. */
function quantities(random: () => number): [string, (contents: readonly number[]) => number][] {
  const single = Array.from({length: 6}, (_, k): [string, (c: readonly number[]) => number] => [
    `content ${k}`,
    (c) => c[k]!,
  ]);
  const weighted = Array.from({length: 13}, (_, k): [string, (c: readonly number[]) => number] => {
    const weights = Array.from({length: 6}, () =>
      random() < 0.5 ? rounded(random() * 2 - (k % 4 === 0 ? 0.6 : 0), 1) : 0,
    );
    return [`weighted ${k}`, (c) => c.reduce((total, share, s) => total + share * weights[s]!, 0)];
  });
  return [...single, ...weighted].filter(() => random() < 0.9);
}

function limitsAround(
  coefficients: readonly number[],
  point: readonly number[],
  batch: number,
  random: () => number,
): Pick<Row, "lower" | "upper"> {
  const value = valueOf({name: "", coefficients}, point);
  const width = Math.abs(value) * (0.02 + random() * 0.25) + 0.001 * batch;
  const [lower, upper] = [value - width * random(), value + width * random()];
  const kind = random();
  if (kind < 0.12) return {lower: value, upper: value};
  return kind < 0.55 ? {lower, upper} : kind < 0.8 ? {upper} : {lower};
}

function goals(
  {variables, rows}: LinearProgram,
  point: readonly number[],
  random: () => number,
  free: boolean,
): LinearProgram {
  const targets = rows.slice(1);
  const aims = targets.map((row) => valueOf(row, point) * (1 + (random() - 0.5) * 0.4));
  const weight = () => 1 + Math.floor(random() * 20);
  const scale = random() < 0.5 ? 0 : 0.001;
  const own = variables.map((v) => ({...v, cost: v.cost * scale}));
  const blank = targets.map(() => 0);
  const at = (k: number, value: number) => blank.map((_, t) => (t === k ? value : 0));
  if (!free) {
    return {
      variables: [
        ...own,
        ...targets.map((row): Variable => ({name: `${row.name} short`, cost: weight()})),
        ...targets.map((row): Variable => ({name: `${row.name} over`, cost: weight()})),
      ],
      rows: [
        {...rows[0]!, coefficients: [...rows[0]!.coefficients, ...blank, ...blank]},
        ...targets.map((row, k) =>
          withValue({...row, coefficients: [...row.coefficients, ...at(k, 1), ...at(k, -1)]}, aims[k]!),
        ),
      ],
    };
  }
  const zeros = variables.map(() => 0);
  return {
    variables: [
      ...own,
      ...targets.map((row): Variable => ({name: `${row.name} miss`, cost: 0, lower: -Infinity})),
      ...targets.map((row): Variable => ({name: `${row.name} size`, cost: weight()})),
    ],
    rows: [
      {...rows[0]!, coefficients: [...rows[0]!.coefficients, ...blank, ...blank]},
      ...targets.map((row, k) =>
        withValue({...row, coefficients: [...row.coefficients, ...at(k, -1), ...blank]}, aims[k]!),
      ),
      ...targets.flatMap((row, k): Row[] => [
        {name: `${row.name} above`, coefficients: [...zeros, ...at(k, -1), ...at(k, 1)], lower: 0},
        {name: `${row.name} below`, coefficients: [...zeros, ...at(k, 1), ...at(k, 1)], lower: 0},
      ]),
    ],
  };
}

function smallestLargestMiss(
  {variables, rows}: LinearProgram,
  point: readonly number[],
  random: () => number,
): LinearProgram {
  const scale = random() < 0.5 ? 0 : 0.001;
  return {
    variables: [...variables.map((v) => ({...v, cost: v.cost * scale})), {name: "largest miss", cost: 1}],
    rows: [
      {...rows[0]!, coefficients: [...rows[0]!.coefficients, 0]},
      ...rows.slice(1).flatMap((row): Row[] => {
        const aim = valueOf(row, point) * (1 + (random() - 0.5) * 0.4);
        const weight = 1 + Math.floor(random() * 5);
        return [
          {name: `${row.name} over`, coefficients: [...row.coefficients, -weight], upper: aim},
          {name: `${row.name} short`, coefficients: [...row.coefficients, weight], lower: aim},
        ];
      }),
    ],
  };
}

/** Rows in units up to 10^4 apart, some variables in other units. */
function badlyScaled({variables, rows}: LinearProgram, random: () => number): LinearProgram {
  const units = variables.map(() => [1, 1, 1000, 0.001, 1][Math.floor(random() * 5)]!);
  return {
    variables: variables.map((v, j) => ({
      ...v,
      cost: v.cost * units[j]!,
      lower: v.lower! / units[j]!,
      upper: v.upper! / units[j]!,
    })),
    rows: rows
      .map((row) => ({...row, coefficients: row.coefficients.map((a, j) => a * units[j]!)}))
      .map((row) => scaledRow(row, 10 ** Math.round((random() - 0.5) * 8))),
  };
}

/** A copy of a row that asks for more than the program can give; below 0, for barely less. */
function beyondReach(
  program: LinearProgram,
  {coefficients}: Row,
  maximum: (program: LinearProgram) => number,
  excess: number,
): Row {
  const variables = program.variables.map((variable, j) => ({...variable, cost: coefficients[j]!}));
  const reach = maximum({...program, variables, sense: "maximise"});
  const batch = program.rows[0]!.upper!;
  return {
    name: "beyond reach",
    coefficients,
    lower: reach + excess * Math.max(Math.abs(reach), 0.01 * batch),
  };
}

function elastic({variables, rows}: LinearProgram): LinearProgram {
  const soft = rows.slice(1);
  const unit = (k: number, value: number) => soft.map((_, t) => (t === k ? value : 0));
  const none = soft.map(() => 0);
  return {
    variables: [
      ...variables,
      ...soft.map(({name}): Variable => ({name: `${name} short`, cost: 100})),
      ...soft.map(({name}): Variable => ({name: `${name} over`, cost: 100})),
    ],
    rows: [
      {...rows[0]!, coefficients: [...rows[0]!.coefficients, ...none, ...none]},
      ...soft.map((row, k) => ({...row, coefficients: [...row.coefficients, ...unit(k, 1), ...unit(k, -1)]})),
    ],
  };
}

function withValue(row: Row, value: number): Row {
  return {...row, lower: value, upper: value};
}

/** The same condition in another unit. */
export function scaledRow(row: Row, factor: number): Row {
  const {lower, upper} = row;
  return {
    ...row,
    coefficients: row.coefficients.map((a) => a * factor),
    ...(lower !== undefined && {lower: lower * factor}),
    ...(upper !== undefined && {upper: upper * factor}),
  };
}

/** The row with its limits moved apart. */
export function widened(row: Row, by: number): Row {
  const {lower, upper} = row;
  return {
    ...row,
    ...(lower !== undefined && {lower: lower - by}),
    ...(upper !== undefined && {upper: upper + by}),
  };
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
