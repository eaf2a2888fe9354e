// Turns the pages of a PDF into pixels, as a printer does, and measures what is dark on them.
// PDFium does it, which shares nothing with what reads the commands of the PDF in pdf.mjs.

import { PDFiumLibrary } from "@hyzyla/pdfium";
import { pages } from "./pdf.mjs";

const DPI = 600;
const DARK = 128;

/** The pages of a PDF with their text, and with their pixels where they are asked for. */
export async function rasters(pdf, { pixels = true } = {}) {
  const library = await PDFiumLibrary.init();
  try {
    const document = await library.loadDocument(pdf);
    const sizes = pages(Buffer.from(pdf));
    const found = [];
    for (const page of document.pages()) {
      const raster = { text: page.getText() };
      if (pixels) {
        const { width, height, data } = await page.render({ scale: DPI / 72, render: "bitmap", colorSpace: "Gray" });
        const size = sizes[found.length];
        Object.assign(raster, { width, height, data: Buffer.from(data), stride: data.length / height });
        // The size in pixels is rounded, and with it what a pixel is.
        Object.assign(raster, { across: size.width / width, down: size.height / height });
      }
      found.push(raster);
    }
    document.destroy();
    return found;
  } finally {
    library.destroy();
  }
}

/** The runs of what holds, as [first, last] places. */
function runs(length, holds) {
  const found = [];
  for (let at = 0; at < length; at += 1) {
    if (!holds(at)) continue;
    if (found.at(-1)?.[1] === at - 1) found.at(-1)[1] = at;
    else found.push([at, at]);
  }
  return found;
}

/** Level lines longer than so many millimetres: where they lie, and how long they are, in millimetres. */
export function levels({ width, height, data, stride, across, down }, least) {
  const longest = (row) => {
    let [best, from] = [[0, 0], -1];
    for (let x = 0; x <= width; x += 1) {
      const dark = x < width && data[row * stride + x] < DARK;
      if (dark && from < 0) from = x;
      if (!dark && from >= 0) {
        if (x - from > best[1] - best[0]) best = [from, x];
        from = -1;
      }
    }
    return best;
  };
  const rows = Array.from({ length: height }, (_, row) => longest(row));
  const long = runs(height, (row) => (rows[row][1] - rows[row][0]) * across > least);
  return long.map(([first, last]) => {
    const [from, to] = rows[Math.round((first + last) / 2)];
    return { y: ((first + last + 1) / 2) * down, thick: (last - first + 1) * down, from: from * across, to: to * across };
  });
}

/** Upright lines that are dark over more than a share of a band: the middle of each, in millimetres. */
export function uprights({ width, data, stride, across, down }, [top, bottom], share) {
  const [first, last] = [Math.ceil(top / down), Math.floor(bottom / down)];
  const dark = new Uint32Array(width);
  for (let row = first; row < last; row += 1) {
    for (let x = 0; x < width; x += 1) if (data[row * stride + x] < DARK) dark[x] += 1;
  }
  const lines = runs(width, (x) => dark[x] > share * (last - first));
  return lines.map(([from, to]) => ((from + to + 1) / 2) * across);
}
