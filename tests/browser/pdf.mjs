// Reads what is drawn on the pages of a PDF back from its own commands, in millimetres of paper.
// Knows as much of ISO 32000-1 as Chromium writes: plain objects, streams packed by deflate, paths,
// transforms, forms.

import { inflateSync } from "node:zlib";

const MILLIMETRES = 25.4 / 72; // of a point, the unit of a PDF

/** The pages: size, and every path that is painted, as lists of points; x runs right, y runs down. */
export function pages(pdf) {
  const objects = objectsOf(pdf);
  const all = [...objects.values()].filter(({ head }) => /\/Type\s*\/Page\b(?!s)/.test(head));
  return all.map(({ head }) => {
    const box = head.match(/\/MediaBox\s*\[([^\]]*)\]/)[1].trim().split(/\s+/).map(Number);
    const [width, height] = [box[2] - box[0], box[3] - box[1]];
    const paths = [];
    const contents = head.match(/\/Contents\s+(\d+) 0 R/)[1];
    // From the upper left corner down, in millimetres.
    const page = [MILLIMETRES, 0, 0, -MILLIMETRES, 0, height * MILLIMETRES];
    run(objects, objects.get(contents).stream, page, paths);
    return { width: width * MILLIMETRES, height: height * MILLIMETRES, paths };
  });
}

/** The extent of a path. */
export function extent(path) {
  const [xs, ys] = [path.map(([x]) => x), path.map(([, y]) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { left, right, top, bottom, width: right - left, height: bottom - top };
}

function objectsOf(pdf) {
  const text = pdf.toString("latin1");
  const objects = new Map();
  for (const match of text.matchAll(/(?:^|\n)(\d+) 0 obj\b/g)) {
    const start = match.index + match[0].length;
    const end = text.indexOf("endobj", start);
    const streamed = text.indexOf("stream", start);
    if (streamed < 0 || streamed > end) {
      objects.set(match[1], { head: text.slice(start, end) });
      continue;
    }
    const head = text.slice(start, streamed);
    const from = streamed + (text[streamed + 6] === "\r" ? 8 : 7);
    const length = Number(head.match(/\/Length\s+(\d+)/)[1]);
    const bytes = pdf.subarray(from, from + length);
    const stream = () => (head.includes("/FlateDecode") ? inflateSync(bytes) : bytes).toString("latin1");
    objects.set(match[1], { head, stream });
  }
  return objects;
}

/** One transform after another: first the inner one. */
const after = ([a, b, c, d, e, f], [A, B, C, D, E, F]) => [
  a * A + b * C,
  a * B + b * D,
  c * A + d * C,
  c * B + d * D,
  e * A + f * C + E,
  e * B + f * D + F,
];

function run(objects, stream, start, paths) {
  const tokens = stream().match(/\((?:\\.|[^\\)])*\)|<[^>]*>|\/[^\s/[\]()<>]+|\[|\]|[^\s[\]()<>/]+/g) ?? [];
  const saved = [];
  let [transform, numbers, name, path] = [start, [], "", []];
  const point = (x, y) => {
    const [, , , , e, f] = after([1, 0, 0, 1, x, y], transform);
    return [e, f];
  };
  const add = (x, y) => path.at(-1)?.push(point(x, y));
  const paint = () => {
    paths.push(...path.filter((part) => part.length > 1));
    path = [];
  };
  const commands = {
    q: () => saved.push(transform),
    Q: () => (transform = saved.pop()),
    cm: () => (transform = after(numbers, transform)),
    m: () => path.push([point(...numbers)]),
    l: () => add(...numbers),
    c: () => add(...numbers.slice(4)),
    v: () => add(...numbers.slice(2)),
    y: () => add(...numbers.slice(2)),
    re: () => {
      const [x, y, width, height] = numbers;
      path.push([point(x, y), point(x + width, y), point(x + width, y + height), point(x, y + height), point(x, y)]);
    },
    h: () => path.at(-1)?.push(path.at(-1)[0]),
    n: () => (path = []),
    Do: () => {
      const form = objects.get(name.match(/\d+/)?.[0]);
      if (!form?.head.includes("/Form")) return;
      const matrix = form.head.match(/\/Matrix\s*\[([^\]]*)\]/)?.[1].trim().split(/\s+/).map(Number);
      run(objects, form.stream, after(matrix ?? [1, 0, 0, 1, 0, 0], transform), paths);
    },
  };
  for (const paints of ["S", "s", "f", "F", "f*", "B", "B*", "b", "b*"]) commands[paints] = paint;
  for (const token of tokens) {
    if (/^[+-]?(\d+\.?\d*|\.\d+)$/.test(token)) numbers.push(Number(token));
    else if (token.startsWith("/")) name = token;
    else {
      commands[token]?.();
      numbers = [];
    }
  }
}
