import { describe, expect, it } from "vitest";
import { clusters } from "../../core/diagnose/weigh.ts";

describe("clusters of readings", () => {
  it("parts readings at gaps, not at fixed limits", () => {
    expect(clusters([12.1, 0, 12.2, 6, 0.05])).toEqual([2, 0, 2, 1, 0]);
  });

  it("parts a way back that carries current from one that does not, and keeps neighbours near battery volts together", () => {
    expect(clusters([0.0, 0.38])).toEqual([0, 1]);
    expect(clusters([12.1, 12.4])).toEqual([0, 0]);
    expect(clusters([12.0, 12.6])).toEqual([0, 1]);
  });

  it("parts millivolts across a fuse that a meter on volts could not", () => {
    expect(clusters([0, 0.02, 0.021, 0.05], "millivolts")).toEqual([0, 1, 1, 2]);
    expect(clusters([0, 0.02, 0.05])).toEqual([0, 0, 0]);
  });
});
