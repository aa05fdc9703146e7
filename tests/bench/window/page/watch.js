// Counts, from outside, what a page renders and draws; runs in it before anything of its own. The program knows nothing
// of it: React tells whoever poses as its developer tools of every commit, and konva clears a layer's canvas once for
// each draw. Each clearing is also a mark in the browser's trace, and so is the first line drawn after it.
(() => {
  /** @type {{ commits: number, renders: number, draws: number[], mostInAFrame: number[] }} */
  let seen = nothing();
  let frame = -1;
  let lastDraw = 0;
  /** @type {number[]} */
  let inFrame = [];

  function nothing() {
    return { commits: 0, renders: 0, draws: [], mostInAFrame: [] };
  }

  globalThis.watched = {
    take() {
      const taken = seen;
      seen = nothing();
      inFrame = [];
      return taken;
    },
    /** Resolves once there has been ink on a layer. */
    async inked(layer) {
      while (performance.getEntriesByName(`ink ${layer}`).length === 0)
        await new Promise((again) => setTimeout(again, 50));
    },
    /** Resolves once nothing has been drawn for 300 ms. */
    async still() {
      while (performance.now() - lastDraw < 300) await new Promise((again) => setTimeout(again, 50));
    },
  };

  const { clearRect, stroke } = CanvasRenderingContext2D.prototype;
  /** Canvases that have been cleared and have no line on them yet, with their layers. */
  const bare = new Map();
  CanvasRenderingContext2D.prototype.clearRect = function (...box) {
    const layer = [...document.querySelectorAll("canvas")].indexOf(this.canvas);
    if (layer >= 0) {
      const now = document.timeline.currentTime;
      lastDraw = performance.now();
      if (now !== frame) inFrame = [];
      frame = now;
      inFrame[layer] = (inFrame[layer] ?? 0) + 1;
      seen.draws[layer] = (seen.draws[layer] ?? 0) + 1;
      seen.mostInAFrame[layer] = Math.max(seen.mostInAFrame[layer] ?? 0, inFrame[layer]);
      performance.mark(`layer ${layer}`);
      bare.set(this.canvas, layer);
    }
    return clearRect.apply(this, box);
  };
  CanvasRenderingContext2D.prototype.stroke = function (...path) {
    if (bare.size > 0 && bare.has(this.canvas)) {
      performance.mark(`ink ${bare.get(this.canvas)}`);
      bare.delete(this.canvas);
    }
    return stroke.apply(this, path);
  };

  // React's tags of components: function, class, forwarded, remembered; and its flag of one that was rendered.
  const COMPONENTS = [0, 1, 11, 14, 15];
  const RENDERED = 1;
  const rendersIn = (fiber) => {
    const before = fiber.alternate;
    const own = COMPONENTS.includes(fiber.tag) && (fiber.flags & RENDERED) !== 0 ? 1 : 0;
    // The same child as before: nothing below was even looked at.
    if (before !== null && before.child === fiber.child) return own;
    let all = own;
    for (let child = fiber.child; child !== null; child = child.sibling) all += rendersIn(child);
    return all;
  };
  globalThis.__REACT_DEVTOOLS_GLOBAL_HOOK__ = {
    renderers: new Map(),
    supportsFiber: true,
    checkDCE() {},
    inject: () => 1,
    onCommitFiberRoot(_, root) {
      seen.commits++;
      seen.renders += rendersIn(root.current);
    },
    onPostCommitFiberRoot() {},
    onCommitFiberUnmount() {},
  };
})();
