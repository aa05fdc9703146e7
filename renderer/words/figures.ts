import { figure } from "../../core/base/figure.ts";

/** Volts with their unit: "12.09 V"; null is a point that floats. */
export function voltsText(volts: number | null, digits = 2): string {
  if (volts === null) return "floating";
  return `${signed(volts, digits)}\u00A0V`;
}

/** A range as a row expects it: "12.4–12.8 V", "0.9–1.5 Ω", or one figure where both are the same. */
export function rangeText(low: number, high: number, unit = "V"): string {
  const figures = low === high ? signed(low, 1) : `${signed(low, 1)}–${signed(high, 1)}`;
  return `${figures}\u00A0${unitSign(unit)}`;
}

/** A range of millivolts across a fuse: "20–30 mV", in tenths where it is written so: "0–0.1 mV". */
export function millivoltsText(low: number, high: number): string {
  const [from, to] = [low, high].map((each) => signed(each, Number.isInteger(each) ? 0 : 1));
  return `${from === to ? from : `${from}–${to}`}\u00A0mV`;
}

/** A number with a true minus, and none before a zero. */
export function signed(value: number, digits = 0): string {
  return figure(value, digits).replace("-", "−");
}

/** Amps with as many figures as help: "4.2 A", "85 mA"; "no current" below a milliamp. */
export function ampsText(amps: number): string {
  const size = Math.abs(amps);
  if (size < 0.001) return "no current";
  if (size < 1) return `${Math.round(size * 1000)}\u00A0mA`;
  return `${size < 100 ? size.toFixed(1) : size.toFixed(0)}\u00A0A`;
}

/** Minutes of work: "2 min", "0.6 min". */
export function minutesText(minutes: number): string {
  const figure =
    minutes < 10 && Math.abs(minutes - Math.round(minutes)) > 0.05 ? minutes.toFixed(1) : `${Math.round(minutes)}`;
  return `${figure}\u00A0min`;
}

/** Minutes that are counted, to the tenth: "12.1 min". */
export function exactMinutes(minutes: number): string {
  return `${figure(minutes, 1)}\u00A0min`;
}

/** A sentence of core as it stands on the screen: no number parts from its unit at the end of a line. */
export function unbroken(sentence: string): string {
  return sentence.replace(/(\d) (?=(?:%|W|m?[AV]|s|min|h|mm²|ohm|°C)(?![a-z]))/g, "$1\u00A0");
}

/** A count with its noun: "1 loose end", "6 steps". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count}\u00A0${count === 1 ? one : many}`;
}

/** A unit as it stands behind a figure on screen: "ohm" as "Ω"; ratios and bare numbers have none. */
export function unitSign(unit: string): string {
  return { ohm: "Ω", degC: "°C", mm2: "mm²" }[unit] ?? unit;
}
