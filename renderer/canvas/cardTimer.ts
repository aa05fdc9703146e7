import type { Card } from "./shown.ts";

/** How long a pointer rests on a wire before the card opens, and how long the card waits for it to come back, milliseconds. */
const REST_MS = 150;
const LEAVE_MS = 250;

/**
 * When the card that says why is open: soon after the pointer comes to rest, until it is elsewhere for a while and not on
 * the card. Opened by a key it stays until it is closed.
 */
export class CardTimer {
  private open: Card | null = null;
  private isKept = false;
  private isUnderPointer = false;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private readonly show: (card: Card | null) => void;

  constructor(show: (card: Card | null) => void) {
    this.show = show;
  }

  get isOpen(): boolean {
    return this.open !== null;
  }

  /** The pointer has moved and is on this now; null where there is nothing to explain. */
  pointAt(card: Card | null): void {
    clearTimeout(this.timer);
    if (this.isKept || this.isUnderPointer) return;
    if (card && this.open && isOf(card, this.open)) return;
    if (card) this.timer = setTimeout(() => this.set(card), REST_MS);
    else if (this.open) this.timer = setTimeout(() => this.set(null), LEAVE_MS);
  }

  /** Opens the card at once, to stay. */
  keep(card: Card): void {
    clearTimeout(this.timer);
    this.set(card);
    this.isKept = true;
  }

  /** The pointer is on the card itself, or has left it. */
  hold(isUnderPointer: boolean): void {
    clearTimeout(this.timer);
    this.isUnderPointer = isUnderPointer;
    if (!isUnderPointer && !this.isKept) this.timer = setTimeout(() => this.set(null), LEAVE_MS);
  }

  /** Closes the card at once, whatever keeps it open. */
  close(): void {
    clearTimeout(this.timer);
    this.isKept = false;
    this.isUnderPointer = false;
    if (this.open) this.set(null);
  }

  private set(card: Card | null): void {
    this.open = card;
    this.show(card);
  }
}

function isOf(one: Card, other: Card): boolean {
  return one.thing.is === other.thing.is && one.thing.id === other.thing.id;
}
