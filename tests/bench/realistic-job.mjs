const INCH = 16256;
const MILLIMETRE = 640;

/** Card bases opened flat, with the finished card they fold to: in 1/1000 in, and in mm. */
const INCH_CARDS = [
  { card: [4250, 5500], base: [8500, 5500] },
  { card: [5000, 7000], base: [10000, 7000] },
  { card: [5000, 5000], base: [10000, 5000] },
  { card: [3500, 8500], base: [7000, 8500] },
];
const METRIC_CARDS = [
  { card: [105, 148], base: [210, 148] },
  { card: [148, 148], base: [296, 148] },
  { card: [99, 210], base: [198, 210] },
];

function pick(random, weighted) {
  const total = weighted.reduce((sum, [weight]) => sum + weight, 0);
  let at = random(total);
  for (const [weight, value] of weighted) {
    if (at < weight) return value;
    at -= weight;
  }
  throw new Error('weights');
}

/**
 * A batch of layered cards as clubs make them. Units: inches in steps of 1/8 (50 %) or 1/16 (30 %), millimetres (20 %).
 * 1 to 24 cards, 1 to 5 papers, 3 to 12 kinds of blank in all. The first paper is the cardstock of the bases (Letter
 * or 12 x 12; A4 or 305 mm), the others are 12 x 12 (60 %), Letter (25 %) or 6 x 6 in (15 %), in metric jobs 305 mm (40 %), A4
 * (45 %) or 152 mm (15 %); three in ten of the others are directional. Kinds, drawn by chance: the base (always), panels and mats
 * (card less 1/8 to 1 in), strips (card wide, 3/8 to 2 in high), focal pieces (1 1/2 in to 3/4 card), words and tags (3/4 to 3 x
 * 3/8 to 1 1/4). One of each on a card (80 %), two (12 %) or three to four (8 %). One blank in ten keeps its direction. Every fifth
 * job has one paper in a second sheet size, open to the same blanks; every tenth has enough-by-area limits of sheets.
 * The trimmer is that of a sketch. `random(n)` gives whole numbers below n.
 */
export function realisticJob(random) {
  const metric = random(10) < 2;
  const step = metric ? MILLIMETRE : random(8) < 5 ? INCH / 8 : INCH / 16;
  const whole = metric ? MILLIMETRE : INCH / 1000;
  const { card, base } = metric ? METRIC_CARDS[random(3)] : INCH_CARDS[random(4)];
  const [cardWide, cardHigh] = card.map((side) => side * whole);
  const inch = metric ? 25 * MILLIMETRE : INCH;
  const between = (least, most) =>
    Math.ceil(least / step) * step + random(Math.max(1, Math.floor((most - least) / step) + 1)) * step;
  const cards = 1 + random(24);
  const sizes = metric
    ? {
        square: [305 * MILLIMETRE, 305 * MILLIMETRE],
        page: [210 * MILLIMETRE, 297 * MILLIMETRE],
        pad: [152 * MILLIMETRE, 152 * MILLIMETRE],
      }
    : { square: [12 * INCH, 12 * INCH], page: [8.5 * INCH, 11 * INCH], pad: [6 * INCH, 6 * INCH] };
  const paper = (id, [width, height], directional) => ({
    id,
    width,
    height,
    sheets: null,
    directional,
    price: null,
    margins: { top: 0, right: 0, bottom: 0, left: 0 },
  });
  const count = 1 + random(5);
  const papers = [paper('p0', sizes[random(2) === 0 ? 'page' : 'square'], false)];
  for (let at = 1; at < count; at += 1) {
    const size = pick(
      random,
      metric
        ? [
            [40, 'square'],
            [45, 'page'],
            [15, 'pad'],
          ]
        : [
            [60, 'square'],
            [25, 'page'],
            [15, 'pad'],
          ],
    );
    papers.push(paper(`p${at}`, sizes[size], random(10) < 3));
  }
  const kinds = [
    () => [between(cardWide - inch, cardWide - inch / 8), between(cardHigh - inch, cardHigh - inch / 8)],
    () => [
      random(2) === 0 ? cardWide : between(cardWide - inch, cardWide - inch / 8),
      between((3 * inch) / 8, 2 * inch),
    ],
    () => [between(1.5 * inch, 0.75 * cardWide), between(1.5 * inch, 0.75 * cardHigh)],
    () => [between(0.75 * inch, 3 * inch), between((3 * inch) / 8, 1.25 * inch)],
  ];
  const fits = ([w, h], { width, height, directional }, turn) =>
    (w <= width && h <= height) || (turn && !directional && h <= width && w <= height);
  const flat = base.map((side) => side * whole);
  const wanted = 3 + random(10);
  const blanks = [{ id: 'base', width: flat[0], height: flat[1], quantity: cards, papers: ['p0'], turn: true }];
  while (blanks.length < wanted) {
    const [width, height] =
      kinds[
        pick(random, [
          [35, 0],
          [25, 1],
          [20, 2],
          [20, 3],
        ])
      ]();
    const perCard = pick(random, [
      [80, 1],
      [12, 2],
      [5, 3],
      [3, 4],
    ]);
    const turn = random(10) > 0;
    const from = papers[random(papers.length)];
    if (!fits([width, height], from, turn)) continue;
    blanks.push({ id: `b${blanks.length}`, width, height, quantity: cards * perCard, papers: [from.id], turn });
  }
  if (random(5) === 0) {
    const of = papers[random(papers.length)];
    const other = { ...of, id: `${of.id}x`, width: sizes.page[0], height: sizes.page[1] };
    if (other.width !== of.width) {
      papers.push(other);
      for (const blank of blanks)
        if (blank.papers[0] === of.id && fits([blank.width, blank.height], other, blank.turn))
          blank.papers.push(other.id);
    }
  }
  if (random(10) === 0) {
    const of = papers[random(papers.length)];
    const area = blanks
      .filter(({ papers: [first] }) => first === of.id)
      .reduce((sum, { width, height, quantity }) => sum + width * height * quantity, 0);
    if (area > 0) of.sheets = Math.ceil((1.3 * area) / (of.width * of.height));
  }
  return {
    trimmer: {
      bladeLength: metric ? 305 * MILLIMETRE : 12 * INCH,
      narrowestStrip: metric ? 6 * MILLIMETRE : INCH / 4,
      thinnestTrim: metric ? MILLIMETRE : INCH / 16,
      kerf: 0,
      rulerStep: metric ? MILLIMETRE : INCH / 16,
      stoppedCuts: false,
    },
    papers,
    blanks,
  };
}
