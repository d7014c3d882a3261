/** Beneath the rows: what the numbers rest on. */

/** Limits, in a paragraph. */
export const Beneath = () => (
  <p className="quiet ranking-limits">
    Each overall is that of the score sheet, worked out in the same way. Colours and sheens are as
    stated, not measured on your model, and what counts is our judgement: rows a few points apart
    are for your eye to settle, best with spoons in hand.
  </p>
);
