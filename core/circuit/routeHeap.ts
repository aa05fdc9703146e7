/** A heap of states by cost; equal costs come out by the smaller state, so that one page always routes the same way. */
export class RouteHeap {
  /** Only the first `count` of these are in the heap: arrays that shrink and grow cost more than they save. */
  private readonly states: number[] = [];
  private readonly costs: number[] = [];
  private count = 0;

  get size(): number {
    return this.count;
  }

  clear(): void {
    this.count = 0;
  }

  push(state: number, cost: number): void {
    let child = this.count++;
    while (child > 0) {
      const parent = (child - 1) >> 1;
      if (!this.comesFirst(state, cost, parent)) break;
      this.states[child] = this.states[parent]!;
      this.costs[child] = this.costs[parent]!;
      child = parent;
    }
    this.states[child] = state;
    this.costs[child] = cost;
  }

  /** Takes the cheapest state off the heap; -1 when it is empty. */
  pop(): number {
    if (this.count === 0) return -1;
    const first = this.states[0]!;
    this.count -= 1;
    const { count } = this;
    const state = this.states[count]!;
    const cost = this.costs[count]!;
    if (count === 0) return first;
    let parent = 0;
    for (;;) {
      let child = 2 * parent + 1;
      if (child >= count) break;
      if (child + 1 < count && this.comesFirst(this.states[child + 1]!, this.costs[child + 1]!, child)) child++;
      if (this.comesFirst(state, cost, child)) break;
      this.states[parent] = this.states[child]!;
      this.costs[parent] = this.costs[child]!;
      parent = child;
    }
    this.states[parent] = state;
    this.costs[parent] = cost;
    return first;
  }

  private comesFirst(state: number, cost: number, place: number): boolean {
    const other = this.costs[place]!;
    return cost < other || (cost === other && state < this.states[place]!);
  }
}
