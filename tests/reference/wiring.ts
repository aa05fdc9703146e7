import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Lots } from "../lots.ts";
import type { Draft, Gauge, Growing } from "./draft.ts";

/** Share of all work that stays near what was drawn last; the rest crosses the vehicle. */
const LOCAL = 0.92;
const NEAR = 3;

/** A splice that feeds branches, the fuse before it, and the bus before that. */
export interface Bus {
  readonly splice: Growing;
  readonly fuse: string;
  readonly before: Bus | null;
}

/** A vehicle circuit being drawn: what it has of feeds and grounds, and where the next branch goes. */
export class Wiring {
  readonly draft: Draft;
  readonly lots: Lots;
  readonly battery: string;
  /** Loads are linear: no lamps, motors, diodes or electronics. */
  readonly isLinear: boolean;
  private readonly buses: Bus[] = [];
  private readonly grounds: Growing[] = [];
  private readonly studs: string[] = [];
  private readonly joints: Growing[] = [];
  private readonly amps = new Map<string, number>();
  private ignition: Growing | null = null;

  constructor(draft: Draft, lots: Lots, isLinear: boolean) {
    this.draft = draft;
    this.lots = lots;
    this.isLinear = isLinear;
    this.battery = draft.add("battery");
    const main = draft.ground("chassis");
    draft.wire(`${this.battery}.-`, main, { mm2: 35, metres: lots.between(0.3, 1) });
    this.studs.push(main);
    this.mainBus();
    this.groundSplice();
  }

  /** 92 % of draws take one of the last three. */
  private near<T>(list: readonly T[]): T {
    return this.lots.oneOf(this.lots.happens(LOCAL) ? list.slice(-NEAR) : list);
  }

  gauge(): Gauge {
    return { mm2: this.lots.oneOf([0.75, 1, 1.5, 1.5, 2.5, 4]), metres: this.lots.spread(0.2, 5) };
  }

  /** A wire run with 0 to 2 in-line joints on the way. */
  run(from: string, to: string): void {
    const { draft, lots } = this;
    const gauge = this.gauge();
    let at = from;
    for (let count = lots.upTo(3); count > 0; count--) {
      if ((this.joints.at(-1)?.count ?? 6) >= 6) this.joints.push(draft.joint());
      const joint = this.joints.at(-1)!;
      const [near, far] = draft.place(
        lots.happens(LOCAL) ? joint : this.near(this.joints.filter(({ count }) => count < 12)),
      );
      draft.wire(at, near, gauge);
      at = far;
    }
    draft.wire(at, to, gauge);
  }

  // -------------------------------------------------------------- feeds

  private mainBus(): Bus {
    const { draft, lots } = this;
    const fuse = draft.add("fuse", { family: "maxi" });
    const splice = draft.splice();
    draft.wire(`${this.battery}.+`, `${fuse}.1`, { mm2: 16, metres: lots.between(0.3, 2) });
    draft.wire(`${fuse}.2`, draft.leg(splice), { mm2: 10, metres: lots.between(0.3, 3) });
    const bus = { splice, fuse, before: null };
    this.buses.push(bus);
    return bus;
  }

  private bus(): Bus {
    const { draft, lots } = this;
    const chosen = this.near(this.buses);
    if (chosen.splice.count < 8) return chosen;
    if (lots.happens(0.4)) return this.mainBus();
    const before = this.buses.find(({ before, splice }) => before === null && splice.count < 14) ?? this.mainBus();
    const fuse = draft.add("fuse");
    const splice = draft.splice();
    draft.wire(draft.leg(before.splice), `${fuse}.1`, { mm2: 6, metres: lots.between(0.1, 0.5) });
    draft.wire(`${fuse}.2`, draft.leg(splice), { mm2: 6, metres: lots.between(0.2, 3) });
    const bus = { splice, fuse, before };
    this.buses.push(bus);
    return bus;
  }

  /** A fresh feed behind a fuse of the box; what is booked counts for every fuse before it. */
  feed(): { readonly point: string; readonly book: (amps: number) => void } {
    const { draft } = this;
    const bus = this.bus();
    const fuse = draft.add("fuse");
    draft.wire(draft.leg(bus.splice), `${fuse}.1`, { mm2: 2.5, metres: 0.2 });
    const book = (amps: number): void => {
      this.book(fuse, amps);
      for (let at: Bus | null = bus; at; at = at.before) this.book(at.fuse, amps);
    };
    return { point: `${fuse}.2`, book };
  }

  private book(fuse: string, amps: number): void {
    this.amps.set(fuse, (this.amps.get(fuse) ?? 0) + amps);
  }

  /** A leg of the splice that the key feeds, for coils and charge lamps. */
  keyed(): string {
    const { draft } = this;
    if (!this.ignition || this.ignition.count >= 16) {
      const { point, book } = this.feed();
      const key = draft.add("ignition-switch");
      this.run(point, `${key}.30`);
      this.ignition = draft.splice();
      this.run(`${key}.15`, draft.leg(this.ignition));
      book(5);
    }
    return draft.leg(this.ignition);
  }

  // -------------------------------------------------------------- grounds

  private groundSplice(): Growing {
    const { draft, lots } = this;
    const splice = draft.splice();
    if (this.studs.length < 2 || lots.happens(0.4)) {
      const isEngine = lots.happens(0.25);
      const stud = draft.ground(isEngine ? "engine" : "chassis");
      if (isEngine) draft.wire(stud, draft.ground("chassis"), { mm2: 25, metres: lots.between(0.2, 0.6) });
      this.studs.push(stud);
    }
    this.run(draft.leg(splice), this.near(this.studs));
    this.grounds.push(splice);
    return splice;
  }

  /** A point that is grounded: a leg of a ground splice, or a stud. */
  ground(): string {
    if (this.lots.happens(0.15)) return this.near(this.studs);
    const splice = this.near(this.grounds);
    return this.draft.leg(splice.count < 9 ? splice : this.groundSplice());
  }

  // -------------------------------------------------------------- the whole

  /** Ratings half as high again as what may be drawn; a battery that can give it. */
  finish(): Circuit {
    let most = 0;
    for (const [fuse, amps] of this.amps) {
      const rating = [3, 5, 7.5, 10, 15, 20, 25, 30, 40].find((rating) => rating > 1.5 * amps);
      this.draft.set(fuse, rating ? { amps: rating } : { amps: Math.min(500, Math.ceil(1.5 * amps)), family: "maxi" });
      most = Math.max(most, amps);
    }
    this.draft.set(this.battery, {
      internalOhms: this.lots.between(0.003, 0.02) / Math.max(1, this.draft.nodes / 400) + 0.001,
    });
    return this.draft.finish();
  }
}
