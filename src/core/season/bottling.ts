// The steps after the last pan is off: filtering and bottling, each with what to mind. None of them promises that food is safe.

export interface BottlingStep {
  id: string;
  what: string;
  caution: string;
}

/**
 * In their order. Temperatures, densities and what niter does: extension services; minutes in a water bath: recipes
 * (common practice). Codes and authorities decide, and the words say so.
 */
export const BOTTLING_STEPS: readonly BottlingStep[] = [
  {
    id: 'filter-hot',
    what: 'Filter it hot, at once.',
    caution:
      'Niter comes out at the finish and settles as it cools. Hot syrup sticks to skin and scalds: gloves, sleeves, nobody behind you.',
  },
  {
    id: 'density',
    what: 'Read its density once more before it goes into jars.',
    caution:
      'Heating it again makes it stronger. Maple under 66 °Bx ferments or spoils, over about 68.9 °Bx crystals form; for birch no legal class is known, 60 to 67 °Bx are in use.',
  },
  {
    id: 'jars',
    what: 'Have clean, heated jars and new lids ready.',
    caution: 'Cold glass breaks under hot syrup.',
  },
  {
    id: 'hot-pack',
    what: 'Fill it at 82 to 88 °C (180 to 190 °F), to about 6 mm (¼ in) under the rim, close it, and lay it on its side.',
    caution:
      'Over about 90 °C (195 °F) new niter forms. Cooler than 82 °C (180 °F) the lid is not heated as it should be.',
  },
  {
    id: 'water-bath',
    what: 'A water bath, where your rules ask for one.',
    caution: 'Recipes quote about 10 minutes; your canning authority decides.',
  },
  {
    id: 'label',
    what: 'Label the jars with the date and the lot.',
    caution: 'What a label must say, and whether it may be sold, your local food rules decide.',
  },
  {
    id: 'keep-cold',
    what: 'Keep it cold after opening, and tell whoever gets a jar.',
    caution: 'Throw away what has fuzz or spots on it, bubbles or smells of yeast.',
  },
];
