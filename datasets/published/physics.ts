import {enthalpy, HEAT_OF_FUSION} from "../../lib/freezing/enthalpy.ts";
import {iceToWaterPressure, iceWaterActivity} from "../../lib/freezing/water-activity.ts";
import type {Composition} from "../../lib/pantry/parts.ts";
import {compare, type PublishedTables, type ValidationRow} from "./row.ts";

/** Ice and supercooled water: the pressures of Murphy and Koop, and the activity of Robinson and Stokes. */
export function activityRows({ice_water_activity}: PublishedTables): ValidationRow[] {
  return ice_water_activity.flatMap((row) => {
    const temperature = Number(row.temperature_C);
    const common = {group: "ice", use: "held" as const, unit: "", temperature};
    return [
      compare({
        ...common,
        // The formula itself, term by term.
        use: "fitted",
        what: `vapour pressure of ice over that of water at ${temperature} °C`,
        published: Number(row.ice_to_water_pressure),
        computed: iceToWaterPressure(temperature),
        tolerance: 1e-5,
        source: row.source_pressure!,
        series: "Murphy and Koop",
      }),
      compare({
        ...common,
        what: `water activity of ice at ${temperature} °C`,
        published: Number(row.water_activity),
        computed: iceWaterActivity(temperature),
        // Their quadratic drifts away from the newer pressures in deep cold.
        tolerance: temperature >= -20 ? 5e-4 : 6e-3,
        source: row.source_activity!,
        series: "Robinson and Stokes",
      }),
    ];
  });
}

/** Ice creams of ASHRAE's table 3: heat capacity above freezing and heat of fusion of their water. */
export function thermalRows({ice_cream_thermal}: PublishedTables): ValidationRow[] {
  return ice_cream_thermal.flatMap((row) => {
    const composition: Composition = {
      water: Number(row.water_percent),
      milkProtein: Number(row.protein_percent),
      milkFat: Number(row.fat_percent),
      sucrose: Number(row.carbohydrate_percent),
      milkSalts: Number(row.ash_percent),
    };
    const common = {group: "heat", use: "held" as const, source: row.source!};
    return [
      compare({
        ...common,
        what: `heat capacity of ${row.food} above freezing`,
        published: Number(row.cp_unfrozen_kJ_per_kg_K),
        computed: enthalpy(composition, 5.5) - enthalpy(composition, 4.5),
        tolerance: 0.05,
        unit: "kJ/(kg K)",
      }),
      compare({
        ...common,
        what: `heat of fusion of the water in ${row.food}`,
        published: Number(row.latent_heat_kJ_per_kg),
        computed: (HEAT_OF_FUSION * Number(row.water_percent)) / 100,
        tolerance: 1,
        unit: "kJ/kg",
      }),
    ];
  });
}
