/** @jsxImportSource preact */
/**
 * Opens the page of those who are asked: what the link holds, or plainly why it cannot be shown.
 * Drawn by Preact, a tenth of what draws the bench: people come here once, on their phones.
 */
import { render } from 'preact';
import '../app.css';
import '../pieces/pieces.css';
import '../pieces/spoon.css';
import '../pieces/form.css';
import './round.css';
import './answering.css';
import { Asked } from './Asked.tsx';

const host = document.getElementById('round')!;
host.replaceChildren();
render(<Asked />, host);
