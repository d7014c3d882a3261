/**
 * Where do cars and their names go on a sheet or a screen? All cars are equally large and stand in
 * order, so that a picture for asking others leads nobody; of all arrangements the one with the
 * largest cars is taken.
 *
 * In: how many cars, the sheet in pixels, the car's shape (width over height). Out: pixels from the
 * upper left. Measures are shares of the sheet's shorter side; our judgement, looked at.
 */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export interface Cell {
  /** Where letter and name stand. */
  readonly head: Box;
  readonly car: Box;
}
export interface Grid {
  readonly columns: number;
  readonly rows: number;
}

/** Width of a car of this shape that is as large as a place allows. */
const carWidth = (width: number, height: number, carAspect: number): number =>
  Math.max(0, Math.min(width, height * carAspect));

/** Columns and rows without a gap, as long as there are no more than four cars. */
function gridsFor(count: number): Grid[] {
  const grids: Grid[] = [];
  for (let columns = 1; columns <= count; columns++) {
    const rows = Math.ceil(count / columns);
    if (count > 4 || columns * rows === count) grids.push({ columns, rows });
  }
  return grids;
}

/** The grid with the largest cars, where each needs `headHeight` above it. */
export function gridFor(
  count: number,
  width: number,
  height: number,
  headHeight: number,
  carAspect: number,
): Grid {
  const sizeIn = ({ columns, rows }: Grid): number =>
    carWidth(width / columns, height / rows - headHeight, carAspect);
  return gridsFor(Math.max(1, count)).reduce((best, grid) =>
    sizeIn(grid) > sizeIn(best) ? grid : best,
  );
}

const edge = 0.03;
const foot = 0.075;
const headAbove = 0.1;
/** Beside the car the name needs so much of the sheet's width. */
const headBeside = 0.24;
/** Cars are compared best side by side; names go beside them where that makes them so much larger. */
const worthTurning = 1.2;
/** Cars are fitted with this margin, which is where a name above one begins. */
const margin = 0.06;

/** A cell for each of `count` cars on a sheet that keeps a line free at its foot. */
export function cellsFor(
  count: number,
  width: number,
  height: number,
  carAspect: number,
): readonly Cell[] {
  const unit = Math.min(width, height);
  const wide = width - 2 * edge * unit;
  const tall = height - (edge + foot) * unit;
  const head = headAbove * unit;
  const side = headBeside * width;
  const above = gridFor(count, wide, tall, head, carAspect);
  const isBeside =
    carWidth(wide - side, tall / count, carAspect) >
    worthTurning * carWidth(wide / above.columns, tall / above.rows - head, carAspect);
  const { columns, rows } = isBeside ? { columns: 1, rows: count } : above;
  const cell = { width: wide / columns, height: tall / rows };
  return Array.from({ length: count }, (_, at): Cell => {
    const x = edge * unit + (at % columns) * cell.width;
    const y = edge * unit + Math.floor(at / columns) * cell.height;
    if (isBeside) {
      const carWide = carWidth(cell.width - side, cell.height, carAspect);
      const carTall = carWide / carAspect;
      const left = x + (cell.width - side - carWide) / 2;
      const headBox = { x: left, y, width: side, height: cell.height };
      const top = y + (cell.height - carTall) / 2;
      return { head: headBox, car: { x: left + side, y: top, width: carWide, height: carTall } };
    }
    const carWide = carWidth(cell.width, cell.height - head, carAspect);
    const carTall = carWide / carAspect;
    const top = y + (cell.height - head - carTall) / 2;
    const left = x + (cell.width - carWide) / 2;
    const inset = margin * carWide;
    return {
      head: { x: left + inset, y: top, width: carWide - 2 * inset, height: head },
      car: { x: left, y: top + head, width: carWide, height: carTall },
    };
  });
}

/** The smallest box that holds every pixel at least this opaque (0–255), or nothing. */
export function boxOf(
  rgba: ArrayLike<number>,
  width: number,
  height: number,
  leastAlpha: number,
): Box | undefined {
  let [left, right, top, bottom] = [width, -1, height, -1];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (rgba[(y * width + x) * 4 + 3]! < leastAlpha) continue;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  if (right < 0) return undefined;
  return { x: left, y: top, width: right - left + 1, height: bottom - top + 1 };
}
