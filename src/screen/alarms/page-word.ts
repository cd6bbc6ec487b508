// A person's word, after a boil, that a call was of no use: it is written on the boil's page, for the boil itself takes no more marks.
import { useEffect, useState } from 'preact/hooks';
import { ask, said } from '../client/store.ts';
import type { BoilPage, Now, RaisingName, RaisingShown } from '../client/types.ts';

type NoUse = readonly RaisingName[];

/** One raising by the name that a boil’s page knows it by. */
export const nameOf = ({ alarm, pan, port, raisedAt: raised }: RaisingShown): RaisingName => ({
  alarm,
  pan,
  port,
  raised,
});

const isSame = (one: RaisingName, other: RaisingName): boolean =>
  one.alarm === other.alarm && one.pan === other.pan && one.port === other.port && one.raised === other.raised;

/** The boil as it is shown with what its page says of its calls. */
export function withPageWords(now: Now, noUse: NoUse): Now {
  if (noUse.length === 0) return now;
  const raisings = now.history.raisings.map((raising) => ({
    ...raising,
    noUse: raising.noUse || noUse.some((name) => isSame(name, nameOf(raising))),
  }));
  const lookBack = { ...now.history.lookBack, noUse: raisings.filter((each) => each.noUse).length };
  return { ...now, history: { ...now.history, raisings, lookBack } };
}

/** The page's list with this call on it, or taken off it. */
export function toggled(noUse: NoUse, raising: RaisingShown): RaisingName[] {
  const name = nameOf(raising);
  const others = noUse.filter((each) => !isSame(each, name));
  return others.length < noUse.length ? others : [...noUse, name];
}

export interface PageWord {
  noUse: NoUse;
  /** Says it of a call, or takes it back. */
  toggle: (raising: RaisingShown) => void;
}

/** Fresh each time: somebody may have written on the page meanwhile. */
async function pageOf(boil: string): Promise<BoilPage> {
  const { page } = (await ask({ boil_page: { boil } })) as { page: BoilPage };
  return page;
}

async function keepToggled(boil: string, raising: RaisingShown): Promise<NoUse> {
  const page = await pageOf(boil);
  const no_use = toggled(page.no_use ?? [], raising);
  await ask({ keep_page: { boil, page: { ...page, no_use } } });
  return no_use;
}

/** null while the boil still takes marks, and where it has no page: a file that was opened and not kept. */
export function usePageWord(now: Now): PageWord | null {
  const [noUse, setNoUse] = useState<NoUse | null>(null);
  const boil = now.view === 'replay' || now.ended ? now.boil : null;
  useEffect(() => {
    let current = true;
    setNoUse(null);
    if (boil === null) return;
    pageOf(boil).then(
      (page) => current && setNoUse(page.no_use ?? []),
      () => undefined,
    );
    return () => void (current = false);
  }, [boil]);
  if (boil === null || noUse === null) return null;
  const toggle = (raising: RaisingShown): void =>
    void keepToggled(boil, raising).then(setNoUse, (error: Error) => {
      said.value = { good: false, sentence: error.message };
    });
  return { noUse, toggle };
}
