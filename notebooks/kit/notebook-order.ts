/** One notebook: its file, its word in the navigation, and the question it answers. */
export interface NotebookEntry {
  readonly file: string;
  readonly word: string;
  readonly question: string;
}

/** The notebooks in the order of the decisions. */
export const NOTEBOOK_ORDER: readonly NotebookEntry[] = [
  {
    file: "season.html",
    word: "Season",
    question: "What does each leg bring in, day by day, with cloud in it?",
  },
  {
    file: "legs.html",
    word: "Legs",
    question: "Which lengths do I cut, and when do I change from one to the next?",
  },
  {
    file: "aiming.html",
    word: "Aiming",
    question: "Is it worth walking out to turn the panel, and where to, when?",
  },
  {
    file: "wiring.html",
    word: "Wiring",
    question: "How thick a cable, which controller, and what do they lose?",
  },
  {
    file: "second-panel.html",
    word: "Second panel",
    question: "Would a second panel be worth its price, or a bigger battery?",
  },
  { file: "sheet.html", word: "Field sheet", question: "All of it on one page to print and take along." },
  {
    file: "checks.html",
    word: "Checks",
    question: "Why trust the numbers: published values and measurements beside ours.",
  },
];
