import type { Amps, Ohms, Share, Volts } from "../base/units.ts";
import type { RatedLamp } from "./lamps.ts";
import { lampAmps } from "./lamps.ts";
import type { Source } from "./source.ts";
import { MEMORY, PRACTICE, published } from "./source.ts";

/** Input ohms of a meter on volts DC (Lessons In Electric Circuits, voltmeter impact; bench multimeter manual). */
export const METER = {
  ohms: 10e6 as Ohms,
  source: published("Lessons In Electric Circuits, voltmeter impact on measured circuit"),
};

/** Ohms from which a meter on ohms shows no figure any more: it reads open (common practice, no source). */
export const OPEN_FROM: Ohms = 1e6;

/** Volts at a lead from which a circuit counts as live: a meter on ohms then shows anything, or is harmed (common practice). */
export const LIVE_FROM: Volts = 0.1;

/** Amps below which a clamp round a wire tells nothing (common practice, no source). */
export const CLAMP_FROM: Amps = 0.3;

/** Amps that a meter draws at these volts. */
export function meterAmps(volts: Volts, meterOhms: Ohms = METER.ohms): Amps {
  return volts / meterOhms;
}

/** Share of the volts that a meter loses by its own current: Rs / (Rs + Ri) (bench multimeter manual, loading errors). */
export function loadingShare(sourceOhms: Ohms, meterOhms: Ohms = METER.ohms): Share {
  return sourceOhms / (sourceOhms + meterOhms);
}

/** Volts that a meter shows of a point with these open volts and ohms of source. */
export function meterVolts(openVolts: Volts, sourceOhms: Ohms, meterOhms: Ohms = METER.ohms): Volts {
  return openVolts * (1 - loadingShare(sourceOhms, meterOhms));
}

/** A meter's ohms should be this many times what it is put across (US Army subcourse SS0602). */
export const NEGLIGIBLE_LOADING = { times: 10, source: published("US Army subcourse SS0602") };

/** Amps of the test lamps at nominal volts, 12 V or 24 V type. No maker's figure was found for either. */
export const TEST_LAMPS: Readonly<Record<"small" | "heavy", { readonly amps: Amps; readonly source: Source }>> = {
  small: { amps: 0.25, source: MEMORY },
  heavy: { amps: 4, source: PRACTICE },
};
export type TestLamp = keyof typeof TEST_LAMPS;

/** The rated point of a test lamp on a vehicle of these nominal volts. */
export function testLamp(lamp: TestLamp, nominalVolts: Volts): RatedLamp {
  return { volts: nominalVolts, amps: TEST_LAMPS[lamp].amps };
}

/** Share of nominal volts across the lamp from which it counts as bright, and as dim (common practice, no source). */
export const BRIGHTNESS = { brightFrom: 0.9 as Share, dimFrom: 0.3 as Share, source: PRACTICE };

/** How a test lamp burns, as a person sees it. */
export type Brightness = "bright" | "dim" | "dark";

/** How a test lamp looks with these volts across it, of either sign. */
export function brightness(voltsAcross: Volts, nominalVolts: Volts): Brightness {
  const share = Math.abs(voltsAcross) / nominalVolts;
  if (share >= BRIGHTNESS.brightFrom) return "bright";
  return share >= BRIGHTNESS.dimFrom ? "dim" : "dark";
}

/**
 * Most ohms in series through which a test lamp still looks this way on these open volts; 0 where it does not even
 * without any.
 */
export function mostOhmsShowing(looks: "bright" | "dim", lamp: TestLamp, openVolts: Volts, nominalVolts: Volts): Ohms {
  const share = looks === "bright" ? BRIGHTNESS.brightFrom : BRIGHTNESS.dimFrom;
  const across = share * nominalVolts;
  return Math.max(0, (openVolts - across) / lampAmps(across, testLamp(lamp, nominalVolts)));
}

/** Ohms in a ground path through which testers still light (vehicle maker's wire and connector repair section, 2021). */
export const TESTERS_LIGHT_THROUGH = {
  bulb: { leastOhms: 20 as Ohms, mostOhms: 30 as Ohms },
  highImpedance: { mostOhms: 200 as Ohms },
  source: published("a vehicle maker's wire and connector repair section, 2021"),
};

/** Fuse of a jumper wire, which never goes across a motor (vehicle maker's electrical troubleshooting text, 1992). */
export const JUMPER_FUSE = {
  amps: 5 as Amps,
  source: published("a vehicle maker's electrical troubleshooting text, 1992"),
};
