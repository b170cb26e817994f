import type {Objective} from "./answer.ts";
import type {Mix} from "./mix-report.ts";
import {outlayOf, paysPacks} from "../program/packs.ts";
import {subjectName, unitOf, valueOf} from "../measure/of-subject.ts";

/** Objective of a brief, with its value in a mix; `undefined` where it optimises nothing. */
export function objectiveOf({brief, shares, composition}: Mix): Objective | undefined {
  const {aim, batch} = brief;
  if (!aim) return undefined;
  const unit = unitOf(aim.subject).full;
  if (paysPacks(brief, aim)) {
    // Where the cost is minimised, every ingredient has a price.
    const outlay = outlayOf(
      brief,
      shares.map((share) => share * batch),
    )!;
    return {name: "cost with whole packs", value: (outlay * 1000) / batch, unit, sense: aim.sense};
  }
  const value = valueOf(aim.subject, {brief, shares, composition});
  return value === undefined ? undefined : {name: subjectName(aim.subject), value, unit, sense: aim.sense};
}
