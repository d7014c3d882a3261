/** The neutral letter of an alternative, in plain type. */
export const Letter = ({ letter }: { letter: string }) => <span className="letter">{letter}</span>;
