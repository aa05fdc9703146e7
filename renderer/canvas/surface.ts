import type { Circuit } from "../../core/circuit/circuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import type { Mark, Spot } from "../../core/drawing/mark.ts";
import { onPaper, type PaperSpot } from "../../core/drawing/paint.ts";
import type { Live } from "../../core/live/live.ts";
import type { Look } from "../../core/parts/kind.ts";
import type { Thing } from "../state/state.ts";
import { paintTurning, TURN_MS, type Turning, turningIn } from "./blades.ts";
import { CardTimer } from "./cardTimer.ts";
import { paintCarried } from "./carrying.ts";
import { contentOf, pageAt, placesOf } from "./content.ts";
import { fittedFor } from "./fitting.ts";
import { paintFlags } from "./flags.ts";
import { paintFocus } from "./focusRing.ts";
import { type Ground, paintUnder } from "./halos.ts";
import { paintKnots } from "./knots.ts";
import { paintLeads } from "./leadTags.ts";
import { type Painted, painted } from "./painted.ts";
import { SHEET_FONT } from "./paintOn.ts";
import { paintPapers } from "./paintPapers.ts";
import { paintDesk, paperOf } from "./paperEdge.ts";
import { paintFrame, paintPen } from "./penPaint.ts";
import { paintPins } from "./pins.ts";
import { spotOf } from "./places.ts";
import { paintPreview, type ThrowPreview } from "./preview.ts";
import { paintPrinted } from "./printedMark.ts";
import { paintReadings } from "./readingFlags.ts";
import { SheetIndex } from "./sheetIndex.ts";
import type { Calls, Shown } from "./shown.ts";
import { SheetStage } from "./stage.ts";
import { type Standing, standingOn } from "./standing.ts";
import { paintStandsOn, type StandsOn, standingOnOthers } from "./standsOn.ts";
import { paintSuspects } from "./suspects.ts";
import { type Throws, throwsOn } from "./throwPlaces.ts";
import { TONES } from "./tones.ts";
import type { Carried, PenShown } from "./underWay.ts";
import {
  fullSize,
  keptInSight,
  middleOf,
  type PaperBox,
  type Pixel,
  pixelOf,
  type Size,
  showing,
  type Viewport,
  zoomed,
  zoomOf,
} from "./viewport.ts";
import { levelOf } from "./zoomLevel.ts";

/** A view is kept this long after the last turn of a wheel, milliseconds. */
const SETTLE_MS = 150;
const ZOOM_STEP = 1.25;

/** What the marks were made from; the same again makes the same marks. */
interface Source {
  readonly circuit: Circuit;
  readonly page: string;
  readonly live: Live;
  readonly look: Look;
  readonly level: number;
}

/**
 * The drawing on its stage, with what lies under and over it. It holds the view while it moves, so that nothing else has
 * to be told before the view has come to rest.
 */
export class SheetSurface {
  readonly stage: SheetStage;
  readonly card: CardTimer;
  shown: Shown;
  calls: Calls;
  view: Viewport = { scale: 1, x: 0, y: 0 };
  window: Size = { width: 1, height: 1 };
  preview: ThrowPreview | null = null;
  carried: Carried | null = null;
  /** The box that is drawn round what is to be chosen, in pixels of the window. */
  framed: { readonly from: Pixel; readonly to: Pixel } | null = null;
  /** What a tool has under way. */
  pen: PenShown | null = null;
  /** Told whenever the view has moved: what lies over the canvas moves with it. */
  readonly followers = new Set<() => void>();
  /** True while the keyboard is what moves things, so that its ring is shown. */
  showsFocus = false;
  /** When the last drawing was asked for, and what making it took, milliseconds. */
  readonly made = { marksMs: 0, paintsMs: 0, fresh: 0, all: 0 };
  private source: Source | null = null;
  private marksNow: readonly Mark[] = [];
  private paintedNow: Painted | null = null;
  private indexNow: SheetIndex | null = null;
  private turning: (Turning & { readonly begun: number }) | null = null;
  private isFitted = false;
  private committed: Viewport | null = null;
  private wishMet = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private readonly box: HTMLElement;

  constructor(box: HTMLElement, container: HTMLDivElement, shown: Shown, calls: Calls) {
    this.box = box;
    this.shown = shown;
    this.calls = calls;
    this.card = new CardTimer((card) => this.calls.onCard(card));
    this.stage = new SheetStage(
      container,
      (canvas) => paintPapers(canvas, this.shown.papers, this.view, this.window),
      (canvas) => this.paintUnder(canvas),
      (canvas) => this.paintOver(canvas),
    );
    for (const weight of [400, 600, 700]) {
      document.fonts.load(`${weight} 12px ${SHEET_FONT}`).then(
        () => this.stage.sheet.redraw(),
        // Without the face the words are set in another one: wider, but there.
        () => undefined,
      );
    }
  }

  get marks(): readonly Mark[] {
    return this.marksNow;
  }

  get standing(): Standing {
    return standingOn(this.shown.circuit, this.shown.page, this.shown.look);
  }

  get throws(): Throws {
    return throwsOn(this.shown.circuit, this.shown.page, this.shown.look);
  }

  get index(): SheetIndex {
    this.indexNow ??= new SheetIndex(this.marksNow, wireIds(this.shown.circuit), this.standing, this.throws.places);
    return this.indexNow;
  }

  // ---------------------------------------------------------------- what is shown

  /** Shows what there is to show now. Only what differs from before is made anew. */
  update(shown: Shown, calls: Calls): void {
    const before = this.shown;
    this.shown = shown;
    this.calls = calls;
    const isOtherPage = this.source === null || before.page !== shown.page || isOtherCircuit(before, shown);
    if (isOtherPage) {
      this.card.close();
      this.committed = shown.viewport;
      if (shown.viewport) this.goTo(shown.viewport, false);
      else this.fit();
    } else if (shown.viewport && shown.viewport !== this.committed) {
      this.committed = shown.viewport;
      this.goTo(shown.viewport, false);
    }
    if (before.papers !== shown.papers) this.stage.repaintPapers();
    this.stage.sheet.dim(shown.full && { full: shown.full, palette: shown.palette });
    this.draw();
    this.meetWish();
    this.stage.repaint();
  }

  /** Fits the canvases to the window; a fitted drawing stays fitted. */
  resize(window: Size, ratio: number): void {
    this.window = window;
    this.stage.resize(window, ratio);
    const kept = this.source === null ? this.shown.viewport : this.isFitted ? null : this.view;
    if (kept === null) this.fit();
    else this.goTo(keptInSight(kept, this.content(), window), false);
    this.draw();
  }

  private draw(): void {
    const { circuit, page, live, look, palette } = this.shown;
    const source: Source = { circuit, page, live, look, level: levelOf(zoomOf(this.view)) };
    const pixels = this.view.scale * this.stage.ratio;
    const isSame = this.source !== null && isSameSource(this.source, source);
    if (isSame && this.paintedNow?.palette === palette && this.paintedNow.pixels === pixels) return;
    const begun = performance.now();
    if (!isSame) this.marksNow = marksOf(source);
    const drawn = performance.now();
    const after = painted(this.marksNow, palette, pixels, this.paintedNow);
    this.made.marksMs = drawn - begun;
    this.made.paintsMs = performance.now() - drawn;
    this.made.fresh = after.fresh;
    this.made.all = after.marks.length;
    const isThrow = this.source !== null && !isSame && this.source.circuit === circuit && this.source.page === page;
    this.source = source;
    this.paintedNow = after;
    this.indexNow = null;
    this.stage.sheet.show(after);
    if (isThrow) this.turn(turningIn(after));
  }

  // ---------------------------------------------------------------- the view

  /** Moves to a view at once. Whoever moves it by hand says so, and it is kept a little after it has come to rest. */
  goTo(view: Viewport, byHand: boolean): void {
    const whole = (value: number): number => Math.round(value * this.stage.ratio) / this.stage.ratio;
    this.view = { scale: view.scale, x: whole(view.x), y: whole(view.y) };
    this.stage.moveTo(this.view, this.window);
    for (const follow of this.followers) follow();
    if (!byHand) return;
    this.isFitted = false;
    this.card.close();
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.settle(), SETTLE_MS);
  }

  /** Keeps the view as it is now: words are set for its zoom, and whoever listens is told. */
  settle(): void {
    clearTimeout(this.timer);
    this.goTo(keptInSight(this.view, this.content(), this.window), false);
    this.draw();
    this.committed = this.view;
    this.calls.onViewport(this.view);
  }

  /** The whole drawing in the window. */
  fit(): void {
    this.goTo(
      fittedFor(
        (level) => this.content(level),
        this.window,
        this.shown.margins,
        placesOf(this.shown.circuit, this.shown.page),
      ),
      false,
    );
    this.isFitted = true;
    if (this.window.width > 1) this.settle();
  }

  zoomTo(zoom: "fit" | "full-size" | "in" | "out", at: Pixel = middleOf(this.window)): void {
    if (zoom === "fit") this.fit();
    else if (zoom === "full-size") this.goTo(fullSize(this.view, this.window, at), true);
    else this.goTo(zoomed(this.view, zoom === "in" ? ZOOM_STEP : 1 / ZOOM_STEP, at), true);
  }

  /** Brings a thing into sight where it is not. */
  show(thing: Thing): void {
    const spot = spotOf(thing, this.marksNow, this.standing);
    if (spot) this.showSpot(spot);
  }

  /** Brings a spot into sight where it is not. */
  showSpot(spot: Spot): void {
    this.showPaper(onPaper(spot));
  }

  /** The same for a spot in millimetres of the page. */
  private showPaper(spot: PaperSpot): void {
    const view = showing(this.view, spot, this.window);
    if (view.x !== this.view.x || view.y !== this.view.y) this.goTo(view, true);
  }

  /** The place of a thing in the window; null where it is not on the page. */
  pixelOfThing(thing: Thing): Pixel | null {
    const spot = spotOf(thing, this.marksNow, this.standing);
    return spot && pixelOf(this.view, spot);
  }

  /** A place in the window as the browser's client pixels. */
  clientAt({ x, y }: Pixel): Pixel {
    const { left, top } = this.box.getBoundingClientRect();
    return { x: left + x, y: top + y };
  }

  /** The box round what is drawn with words set for this zoom. */
  private content(level = levelOf(zoomOf(this.view))): PaperBox {
    return contentOf(this.shown.circuit, this.shown.page, this.shown.look, level);
  }

  private meetWish(): void {
    const { wish } = this.shown;
    if (!wish || wish.count === this.wishMet || this.window.width <= 1) return;
    this.wishMet = wish.count;
    if ("show" in wish.want) this.show(wish.want.show);
    else if ("spot" in wish.want) this.showPaper(wish.want.spot);
    else this.zoomTo(wish.want.zoom);
  }

  // ---------------------------------------------------------------- painting

  repaint(): void {
    this.stage.repaint();
  }

  private ground(canvas: CanvasRenderingContext2D): Ground {
    const { palette } = this.shown;
    return { canvas, view: this.view, marks: this.marksNow, standing: this.standing, tones: TONES[palette] };
  }

  private paintUnder(canvas: CanvasRenderingContext2D): void {
    const { circuit, page, selection, also, hover, different } = this.shown;
    const paper = pageAt(circuit, page);
    const ground = this.ground(canvas);
    if (paper) paintDesk({ ...ground, window: this.window }, paperOf(paper));
    const chosen = selection ? [selection, ...also] : [];
    paintUnder(ground, { chosen, hovered: hover, different });
  }

  private paintOver(canvas: CanvasRenderingContext2D): void {
    const ground = this.ground(canvas);
    const { circuit, live, knots, readings, leads, flagged, suspects, selection } = this.shown;
    if (this.turning) paintTurning(ground, this.turning, (performance.now() - this.turning.begun) / TURN_MS);
    paintSuspects(ground, circuit, live, suspects);
    paintFlags(ground, circuit, flagged);
    paintPins(ground, circuit, this.shown.page);
    paintReadings(ground, readings);
    paintLeads(ground, circuit, leads);
    paintKnots(ground, knots);
    if (this.showsFocus && selection) paintFocus(ground, selection);
    paintPrinted(ground, circuit, this.shown.page, selection);
    if (this.preview) paintPreview(ground, this.preview);
    if (!this.carried) paintStandsOn(ground, this.chosenOnOthers());
    if (this.carried && this.paintedNow) paintCarried(ground, circuit, this.paintedNow, this.carried);
    if (this.pen) paintPen(ground, this.shown.palette, this.pen);
    if (this.framed) paintFrame(ground, this.framed);
  }

  /** What is chosen and stands on something: it was moved there by keys, or lay there before. */
  private chosenOnOthers(): readonly StandsOn[] {
    const { circuit, page, selection, also } = this.shown;
    const chosen = selection ? [selection, ...also] : [];
    const parts = chosen.flatMap(({ is, id }) => (is === "part" ? [id] : []));
    return parts.length === 0 ? [] : standingOnOthers(circuit, page, parts, 0, 0);
  }

  /** Lets thrown blades turn; wires show their new states at once. */
  private turn(what: Turning): void {
    if (what.blades.length === 0 || matchMedia("(prefers-reduced-motion: reduce)").matches) return;
    const turning = { ...what, begun: performance.now() };
    this.turning = turning;
    this.stage.sheet.hide(new Set(what.blades.map(({ painted }) => painted)));
    const step = (): void => {
      if (this.turning !== turning) return;
      if (performance.now() - turning.begun < TURN_MS) requestAnimationFrame(step);
      else this.stopTurning();
      this.stage.repaintOver();
    };
    requestAnimationFrame(step);
  }

  private stopTurning(): void {
    this.turning = null;
    this.stage.sheet.hide(new Set());
  }

  destroy(): void {
    clearTimeout(this.timer);
    this.card.close();
    this.turning = null;
    this.stage.destroy();
  }
}

/** Another document, not the same one after an edit. */
function isOtherCircuit(before: Shown, after: Shown): boolean {
  return before.circuit !== after.circuit && before.viewport !== after.viewport && after.viewport === null;
}

function isSameSource(one: Source, other: Source): boolean {
  return (
    one.circuit === other.circuit &&
    one.page === other.page &&
    one.live === other.live &&
    one.look === other.look &&
    one.level === other.level
  );
}

function marksOf({ circuit, page, live, look, level }: Source): readonly Mark[] {
  const sheet = sheetOf({ circuit, page, live, look, framed: false, zoom: level });
  return sheet.ok ? sheet.value.marks : [];
}

function wireIds({ wires }: Circuit): ReadonlySet<string> {
  return new Set(wires.map(({ id }) => id));
}
