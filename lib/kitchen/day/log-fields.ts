import type {ProcessReport} from "../cooking/follow-process.ts";
import {COOLING} from "../cooking/pasteurisation.ts";
import {heats, unitOfTime} from "../cooking/process-steps.ts";

/** A field to be filled in by hand. */
export interface LogField {
  readonly label: string;
  readonly unit: string;
}

/** Fields to be filled in by hand while a batch is made. */
export function logFields(report: ProcessReport | undefined, runs: number): LogField[] {
  const heated = report?.heated ?? true;
  // Of the mix: fruit is cooked before it.
  const last = report?.steps.findLast(heats)?.step;
  const held = (last && "heat" in last && last.holdSeconds) || 0;
  return [
    {label: "Date", unit: ""},
    {label: "Made by", unit: ""},
    {label: "Batch number", unit: ""},
    ...(report?.heated
      ? [
          {label: "Highest temperature of the mix", unit: "°C"},
          {label: "Held there for", unit: unitOfTime(held)},
        ]
      : []),
    ...(heated ? [{label: `At or below ${COOLING.temperature} °C after`, unit: "min"}] : []),
    {label: "Mix before churning", unit: "°C"},
    {label: runs === 1 ? "Drawn at" : "Drawn at, each run", unit: "°C"},
    {label: "Cup of mix weighs", unit: "g"},
    {label: "Same cup frozen weighs", unit: "g"},
    {label: "Into the freezer at", unit: "h"},
    {label: "Freezer", unit: "°C"},
  ];
}
