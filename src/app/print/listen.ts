/**
 * Readies the comparison for paper: fetched once the page has come to rest, laid out the moment the
 * browser begins to print, which waits for nothing, and taken away after.
 */
type Printing = typeof import('./printing.tsx');

let fetched: Promise<Printing> | undefined;
const fetchPrinting = (): Promise<Printing> => {
  fetched ??= import('./printing.tsx');
  return fetched;
};

/** After the page itself, ms. */
const restMs = 1500;

/** Listens until it is told to stop, by the function it answers with. */
export function listenForPrinting(): () => void {
  let stop = (): void => {};
  let isWanted = true;
  const timer = setTimeout(() => {
    fetchPrinting().then(
      ({ layOutOnPrint }) => {
        if (isWanted) stop = layOutOnPrint();
      },
      // Without it the browser prints the page as it is on the screen.
      () => {},
    );
  }, restMs);
  return () => {
    isWanted = false;
    clearTimeout(timer);
    stop();
  };
}

/** Opens the browser's way to print, once there is something to print. */
export const printComparison = (): void => {
  const go = (): void => window.print();
  void fetchPrinting().then(go, go);
};
