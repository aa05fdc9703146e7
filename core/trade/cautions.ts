import type { Source } from "./source.ts";
import { derived, MEMORY, published } from "./source.ts";

/** A danger of the work, as a code for the sentence, and who says so. Figures in plain numbers, units in their names. */
export interface Caution {
  readonly code: string;
  readonly topic: string;
  readonly figures?: Readonly<Record<string, number>>;
  readonly source: Source;
}

/** Cautions that sheets and steps draw on; each names its own document. The vehicle's own figure always wins. */
export const CAUTIONS: readonly Caution[] = [
  {
    code: "airbag-wait",
    topic: "restraints stay live after the battery is off",
    figures: { minutes: 5 },
    source: published("NHTSA, Interim Guidance DOT HS 811 575, version 2"),
  },
  {
    code: "airbag-hold",
    topic: "how long some restraint modules hold their firing energy",
    figures: { leastSeconds: 10, mostSeconds: 60 },
    source: published("vehicle makers' restraint sections, 1996, 1998 and 2004"),
  },
  {
    code: "restraint-wiring",
    topic: "yellow covering: no splice, no repair, probe from the wire side with the named adapters",
    source: published("a vehicle maker's restraint section, 2001, page 23-28"),
  },
  {
    code: "airbag-no-probe",
    topic: "no lamp, voltmeter or ohmmeter on a firing circuit",
    source: published("a vehicle maker's air-bag service precautions"),
  },
  {
    code: "orange-cable",
    topic: "orange covering: high voltage, taken as live, never cut or opened",
    figures: { aboveVoltsDc: 60 },
    source: published(
      "NFPA, Electric and Hybrid Vehicle Quick Reference, 2014; AIS-038 draft, September 2019, 5.1.1.5.3",
    ),
  },
  {
    code: "blue-yellow-cable",
    topic: "blue or yellow covering may be a middle voltage",
    source: published("NFPA, Electric and Hybrid Vehicle Quick Reference, 2014"),
  },
  {
    code: "high-voltage-isolation",
    topic: "isolation of a high-voltage system",
    figures: { ohmsPerVolt: 500, monitoredDcOhmsPerVolt: 100 },
    source: published("NHTSA amendment to FMVSS 305, press report at courthousenews.com"),
  },
  { code: "out-of-scope", topic: "test steps on an orange cable", source: derived("12 and 24 V circuits only") },
  {
    code: "fuse-like-for-like",
    topic: "same rating only, never foil or wire; a fuse that blows again has a short or overload to find first",
    source: published("Peterbilt 579/567 operator's manual, page 45; car fuses guide at rs-online.com"),
  },
  {
    code: "negative-first",
    topic: "battery negative off first; on last is common practice, no source",
    source: published("US Army TM 10-3930-671-24, page F-303"),
  },
  {
    code: "battery-off-for-ohms",
    topic: "batteries off before a resistance test or a part is replaced",
    source: published("US Army TM 5-3805-255-14, WP 0020-9"),
  },
  {
    code: "back-probe",
    topic: "back-probe rather than pierce; seal again what was opened",
    source: published(
      "Auto Service Professional, October 2018, page 36; a vehicle maker's load-testing procedure, 2025",
    ),
  },
  {
    code: "no-lamp-on-module",
    topic: "no test lamp on a module's circuit",
    source: published("vehicle maker's bulletin TSB-92-00-003, August 1992; an ASE study guide"),
  },
  {
    code: "no-ohmmeter-on-module",
    topic: "no ohmmeter on solid-state circuits",
    source: published("a vehicle maker's electrical troubleshooting text, 1992"),
  },
  {
    code: "jumper-fused",
    topic: "a jumper is fused, and never set across a motor or other heavy load",
    figures: { amps: 5 },
    source: published("a vehicle maker's electrical troubleshooting text, 1992"),
  },
  {
    code: "window-closing",
    topic: "when a power window may close",
    source: published("49 CFR 571.118, S.4, 2004 and 2006 editions"),
  },
  {
    code: "window-reversal",
    topic: "unsupervised closing must reverse",
    figures: { beforeNewtons: 100, leastMm: 4, mostMm: 200 },
    source: published("NHTSA interpretation 10790 on FMVSS 118, S.5"),
  },
  {
    code: "window-reversal-europe",
    topic: "the same force and opening",
    figures: { beforeNewtons: 100, leastMm: 4, mostMm: 200 },
    source: MEMORY,
  },
  {
    code: "window-switches",
    topic: "switches must resist a knee or an elbow",
    source: published("69 FR 55517, 15 September 2004; Federal Register document 06-3505, 12 April 2006"),
  },
  {
    code: "direct-feed-moves",
    topic: "a motor fed direct has no pinch protection: hands clear",
    source: derived("49 CFR 571.118 and NHTSA interpretation 10790"),
  },
  {
    code: "cranking",
    topic: "fuel or ignition disabled first; longest crank and pause",
    figures: { seconds: 30, pauseMinutes: 2 },
    source: published("US Army TM 10-3930-671-24"),
  },
];

/** The caution of a code; null where there is none. */
export function cautionOf(code: string): Caution | null {
  return CAUTIONS.find((each) => each.code === code) ?? null;
}
