import { projectionOf, type Quad } from "../../core/drawing/projection.ts";

/** A picture in memory: four bytes for each pixel, red, green, blue and how much it covers, row by row. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray<ArrayBuffer>;
}

/** How the pixels of a printed page are made ready for the page. */
export interface Treatment {
  /** 1 as it is; further from middle grey above. */
  readonly contrast: number;
  /** Leaves only what is printed: paper and shadows on it become clear. */
  readonly whiteOut: boolean;
  /** For a dark page: dark ink becomes light and white paper as dark as the page, hues stay. */
  readonly isDark: boolean;
}

/** How dark something must be against the paper round it to be seen at all, and to be ink through and through. */
const FAINTEST = 0.1;
const FULL_INK = 0.38;
/** The dark page, `--sheet` of the style sheet. */
const DARK_PAGE = [20, 24, 29] as const;

/** Makes pixels ready in place. */
export function treat(pixels: Pixels, { contrast, whiteOut, isDark }: Treatment): void {
  if (whiteOut) evenOut(pixels);
  if (contrast !== 1) stretch(pixels, contrast);
  if (whiteOut) clearPaper(pixels);
  if (isDark) darken(pixels, whiteOut);
}

/** Moves every value away from middle grey, or nearer to it below 1. */
function stretch({ data }: Pixels, contrast: number): void {
  const table = Uint8ClampedArray.from({ length: 256 }, (_, value) => 128 + (value - 128) * contrast);
  for (let at = 0; at < data.length; at += 4) {
    for (let channel = 0; channel < 3; channel++) data[at + channel] = table[data[at + channel]!]!;
  }
}

// ---------------------------------------------------------------- paper

/** Blocks along the longer side in which the paper's own brightness is measured. */
const BLOCKS = 48;
/** Share of a block's pixels that are darker than its paper: lines take less than that. */
const PAPER_SHARE = 0.8;
/** Paper is not taken to be darker than this: a black box on the page has paper of its neighbours. */
const LEAST_PAPER = 60;

/** Divides by the brightness of the paper round each pixel, so that shadows and yellowed paper become an even white. */
function evenOut(pixels: Pixels): void {
  const { width, height, data } = pixels;
  const size = Math.max(8, Math.ceil(Math.max(width, height) / BLOCKS));
  const [across, down] = [Math.ceil(width / size), Math.ceil(height / size)];
  const paper = spread(measured(pixels, size, across, down), across, down);
  for (let y = 0; y < height; y++) {
    const row = Math.min(down - 1, Math.max(0, (y + 0.5) / size - 0.5));
    const [top, low] = [Math.floor(row), row - Math.floor(row)];
    const below = Math.min(down - 1, top + 1);
    for (let x = 0; x < width; x++) {
      const column = Math.min(across - 1, Math.max(0, (x + 0.5) / size - 0.5));
      const [left, far] = [Math.floor(column), column - Math.floor(column)];
      const right = Math.min(across - 1, left + 1);
      const upper = paper[top * across + left]! * (1 - far) + paper[top * across + right]! * far;
      const lower = paper[below * across + left]! * (1 - far) + paper[below * across + right]! * far;
      const by = 255 / (upper * (1 - low) + lower * low);
      const at = (y * width + x) * 4;
      data[at] = data[at]! * by;
      data[at + 1] = data[at + 1]! * by;
      data[at + 2] = data[at + 2]! * by;
    }
  }
}

/** The brightness of the paper in each block: that below which four fifths of its pixels lie. */
function measured({ width, height, data }: Pixels, size: number, across: number, down: number): Float32Array {
  const paper = new Float32Array(across * down);
  const counts = new Uint32Array(256);
  for (let block = 0; block < paper.length; block++) {
    counts.fill(0);
    const [x0, y0] = [(block % across) * size, Math.floor(block / across) * size];
    let all = 0;
    for (let y = y0; y < Math.min(height, y0 + size); y += 2) {
      for (let x = x0; x < Math.min(width, x0 + size); x += 2) {
        const at = (y * width + x) * 4;
        if (data[at + 3]! < 128) continue;
        const light = Math.round(0.299 * data[at]! + 0.587 * data[at + 1]! + 0.114 * data[at + 2]!);
        counts[light] = counts[light]! + 1;
        all++;
      }
    }
    let value = 255;
    for (let above = 0; value > 0 && above + counts[value]! < all * (1 - PAPER_SHARE); value--) above += counts[value]!;
    paper[block] = all === 0 ? 0 : value;
  }
  return paper;
}

/** Blocks to each side among which the brightest is paper: a filled box is no larger than that. */
const ROUND = 5;
/** Paper in a shadow has at least this share of the brightest round it. */
const SHADOW = 0.7;

/** Takes from brighter neighbours where a block is mostly printed over, so that a filled box does not count as paper. */
function spread(paper: Float32Array, across: number, down: number): Float32Array {
  return paper.map((own, block) => {
    const [x, y] = [block % across, Math.floor(block / across)];
    let brightest = own;
    for (let dy = -ROUND; dy <= ROUND; dy++) {
      for (let dx = -ROUND; dx <= ROUND; dx++) {
        if (x + dx < 0 || x + dx >= across || y + dy < 0 || y + dy >= down) continue;
        brightest = Math.max(brightest, paper[block + dy * across + dx]!);
      }
    }
    return Math.max(LEAST_PAPER, own < brightest * SHADOW ? brightest : own);
  });
}

/** Makes paper clear and leaves ink: laid on white, it looks as before but for what was fainter than a smudge. */
function clearPaper({ data }: Pixels): void {
  for (let at = 0; at < data.length; at += 4) {
    const [red, green, blue] = [data[at]!, data[at + 1]!, data[at + 2]!];
    const ink = 1 - Math.min(red, green, blue) / 255;
    const share = Math.min(1, Math.max(0, (ink - FAINTEST) / (FULL_INK - FAINTEST)));
    const cover = share * share * (3 - 2 * share);
    if (cover > 0) {
      data[at] = 255 - (255 - red) / cover;
      data[at + 1] = 255 - (255 - green) / cover;
      data[at + 2] = 255 - (255 - blue) / cover;
    }
    data[at + 3] = data[at + 3]! * cover;
  }
}

/**
 * Turns light and dark round and keeps hues: what is inverted is turned by half the circle of hues, in the matrix that the
 * specification of filter effects gives for it. White paper becomes the page; where it is clear already, ink is only turned.
 */
function darken({ data }: Pixels, isClear: boolean): void {
  const [pageRed, pageGreen, pageBlue] = isClear ? [0, 0, 0] : DARK_PAGE;
  for (let at = 0; at < data.length; at += 4) {
    const [r, g, b] = [255 - data[at]!, 255 - data[at + 1]!, 255 - data[at + 2]!];
    const red = clamp(-0.574 * r + 1.43 * g + 0.144 * b);
    const green = clamp(0.426 * r + 0.43 * g + 0.144 * b);
    const blue = clamp(0.426 * r + 1.43 * g - 0.856 * b);
    data[at] = pageRed + (red * (255 - pageRed)) / 255;
    data[at + 1] = pageGreen + (green * (255 - pageGreen)) / 255;
    data[at + 2] = pageBlue + (blue * (255 - pageBlue)) / 255;
  }
}

function clamp(value: number): number {
  return Math.min(255, Math.max(0, value));
}

// ---------------------------------------------------------------- laying down

/**
 * What four corners of a picture bound, laid down on four corners of a new one: each new pixel is taken from the four old ones
 * round where it comes from. What lies outside the corners stays clear.
 */
export function laidDown(source: Pixels, from: Quad, onto: Quad, width: number, height: number): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  const [a, b, c, d, e, f, g, h, i] = projectionOf(onto, from);
  const old = source.data;
  const [lastX, lastY] = [source.width - 1, source.height - 1];
  for (let y = 0; y < height; y++) {
    const py = y + 0.5;
    const [left, right] = spanOf(onto, py);
    for (let x = Math.max(0, Math.ceil(left - 0.5)); x + 0.5 <= right && x < width; x++) {
      const px = x + 0.5;
      const w = g * px + h * py + i;
      const sx = Math.min(lastX, Math.max(0, (a * px + b * py + c) / w - 0.5));
      const sy = Math.min(lastY, Math.max(0, (d * px + e * py + f) / w - 0.5));
      const [x0, y0] = [Math.floor(sx), Math.floor(sy)];
      const [fx, fy] = [sx - x0, sy - y0];
      const first = (y0 * source.width + x0) * 4;
      const beside = x0 < lastX ? 4 : 0;
      const below = y0 < lastY ? source.width * 4 : 0;
      const at = (y * width + x) * 4;
      for (let channel = 0; channel < 4; channel++) {
        const here = first + channel;
        const upper = old[here]! * (1 - fx) + old[here + beside]! * fx;
        const lower = old[here + below]! * (1 - fx) + old[here + below + beside]! * fx;
        data[at + channel] = upper * (1 - fy) + lower * fy;
      }
    }
  }
  return { width, height, data };
}

/** From where to where a line across cuts a convex outline; the wrong way round where it passes it by. */
function spanOf(quad: Quad, y: number): readonly [number, number] {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let index = 0; index < 4; index++) {
    const [x0, y0] = quad[index]!;
    const [x1, y1] = quad[(index + 1) % 4]!;
    if (y < Math.min(y0, y1) || y > Math.max(y0, y1)) continue;
    const xs = y0 === y1 ? [x0, x1] : [x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)];
    left = Math.min(left, ...xs);
    right = Math.max(right, ...xs);
  }
  return [left, right];
}

/** A picture of half the size, four pixels made one, for a view that is further away. Colours count by how much they cover. */
export function halved({ width, height, data }: Pixels): Pixels {
  const [half, low] = [Math.max(1, width >> 1), Math.max(1, height >> 1)];
  const small = new Uint8ClampedArray(half * low * 4);
  const [beside, below] = [width > 1 ? 4 : 0, height > 1 ? width * 4 : 0];
  for (let y = 0; y < low; y++) {
    for (let x = 0; x < half; x++) {
      const [p, at] = [(y * 2 * width + x * 2) * 4, (y * half + x) * 4];
      const [q, r, s] = [p + beside, p + below, p + below + beside];
      const [c0, c1, c2, c3] = [data[p + 3]!, data[q + 3]!, data[r + 3]!, data[s + 3]!];
      const cover = c0 + c1 + c2 + c3;
      if (cover === 0) continue;
      for (let channel = 0; channel < 3; channel++) {
        const sum =
          data[p + channel]! * c0 + data[q + channel]! * c1 + data[r + channel]! * c2 + data[s + channel]! * c3;
        small[at + channel] = sum / cover;
      }
      small[at + 3] = cover / 4;
    }
  }
  return { width: half, height: low, data: small };
}
