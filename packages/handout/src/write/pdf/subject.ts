/** What a handout is, by language; it stands in the document's properties. */
const SUBJECTS: Readonly<Record<string, string>> = {
  en: 'A card to make: what it takes, how its sheets are cut, and the steps.',
  de: 'Eine Karte zum Nachmachen: was man braucht, wie die Bogen geschnitten werden, und die Schritte.',
};

/** What a handout is, in the language of a BCP 47 tag; in English where there are no words for it. */
export function subjectIn(language: string): string {
  return SUBJECTS[language.split('-', 1)[0] ?? ''] ?? SUBJECTS['en'] ?? '';
}
