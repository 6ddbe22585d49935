import { acceptTables } from "@/lib/accept";
import { arcTables } from "@/lib/arc";
import { diagnoseTables } from "@/lib/diagnose";
import { measureTables } from "@/lib/measure";
import { sectionFigures, sectionReportFields, sectionSets } from "@/lib/section";
import { setupTables } from "@/lib/setup";
import { tradeTables } from "@/lib/trade";

/** The tables of every room a verdict, a size or an advice rests on. */
export const sealedTables = {
  accept: acceptTables,
  trade: tradeTables,
  measure: measureTables,
  setup: setupTables,
  arc: arcTables,
  diagnose: diagnoseTables,
  section: { sets: sectionSets, figures: sectionFigures, reportFields: sectionReportFields },
} as const;
