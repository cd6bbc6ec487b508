// Puts the chosen theme, language and the page's title where CSS, readers and the browser's tab find them.
import { effect } from '@preact/signals';
import { say } from '../language/say.ts';
import { isLost, live, settings } from '../client/store.ts';
import { usualMonthFirst } from '../client/unit-sets.ts';
import { language, LANGUAGES, monthFirst } from '../language/language.ts';
import { pageTitle } from '../words/alarm-words.ts';

/** Follows theme, language and title from now on; called once for a page. */
export function followThemeAndTitle(): void {
  effect(() => {
    document.documentElement.dataset['theme'] = settings.value.theme;
  });
  effect(() => {
    language.value = LANGUAGES.tagFor(settings.value.language, navigator.languages);
    monthFirst.value = usualMonthFirst(language.value, navigator.languages);
    document.documentElement.lang = language.value;
  });
  effect(() => {
    document.title = isLost.value ? say('page.lost') : pageTitle(live.value);
  });
}
