/** What a builder does with their own build on the page: opens cards, finds spoons, goes by keyboard. */
import type { Locator, Page } from 'playwright-core';

export const button = (within: Page | Locator, name: string | RegExp): Locator =>
  within.getByRole('button', { name, exact: typeof name === 'string' });
export const carOf = (page: Page, letter: string): Locator =>
  page.getByRole('article', { name: `Alternative ${letter}`, exact: true });
export const letters = (page: Page): Promise<string[]> =>
  page.locator('.car .letter').allTextContents();
export const paintOf = (page: Page, letter: string, part: string): Promise<string> =>
  carOf(page, letter)
    .locator(`svg [data-part="${part}"]`)
    .first()
    .evaluate((path) => getComputedStyle(path).fill);
export const named = (page: Page): Promise<string[]> =>
  page.locator('.part-table thead .alternative-name').allTextContents();
/** The card of a part, opened from the words beneath its name in the table. */
export async function cardOf(page: Page, part: string): Promise<Locator> {
  await button(page, new RegExp(`the card of ${part}$`)).click();
  const card = page.getByRole('dialog', { name: part, exact: true });
  await card.waitFor();
  return card;
}
export const done = (card: Locator): Promise<void> => button(card, 'Done').click();
export const undo = (page: Page): Promise<void> =>
  button(page.locator('.head-tools'), 'Undo').first().click();
/** Finds a spoon by its name and presses it. */
export async function pick(within: Locator, finish: string): Promise<void> {
  await within.getByRole('searchbox').fill(finish);
  await within
    .getByRole('option', { name: new RegExp(finish) })
    .first()
    .click();
}
export async function newBuild(page: Page): Promise<Locator> {
  await page.evaluate(() => window.scrollTo(0, 0));
  if (await button(page, 'More').isVisible()) await button(page, 'More').click();
  await button(page, 'New…').last().click();
  const dialog = page.getByRole('dialog', { name: 'New build' });
  await dialog.waitFor();
  return dialog;
}

/** Presses Tab, or Shift and Tab, until what has the focus is called like this. */
export async function reach(page: Page, name: RegExp, isBack = false): Promise<void> {
  for (let step = 0; step < 160; step++) {
    const words = await page.evaluate(() => {
      const now = document.activeElement;
      const label = now instanceof HTMLInputElement ? (now.labels?.[0]?.textContent ?? '') : '';
      return (now?.getAttribute('aria-label') ?? (label || now?.textContent) ?? '').trim();
    });
    if (name.test(words)) return;
    await page.keyboard.press(isBack ? 'Shift+Tab' : 'Tab');
  }
  throw new Error(`the keyboard never came to ${name}`);
}
