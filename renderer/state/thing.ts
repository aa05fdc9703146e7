import type { PaperSpot } from "../../core/drawing/paint.ts";

/** Something on the bench that is chosen, or that the pointer or the keyboard is on: a part, a wire or a point. */
export interface Thing {
  readonly is: "part" | "wire" | "point";
  readonly id: string;
}

/** A wish that the drawing meets: something to be in sight, or a zoom. `count` tells one wish from the next. */
export interface Wish {
  readonly want:
    | { readonly show: Thing }
    | { readonly spot: PaperSpot }
    | { readonly zoom: "fit" | "full-size" | "in" | "out" };
  readonly count: number;
}
