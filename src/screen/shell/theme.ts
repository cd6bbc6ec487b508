// Puts the chosen theme, language and the page's title where CSS, readers and the browser's tab find them.
import { effect } from '@preact/signals';
import { say } from '../language/say.ts';
import { isLost, live, settings } from '../client/store.ts';
import { language, languageFor } from '../language/language.ts';
import { pageTitle } from '../words/alarm-words.ts';

export function followThemeAndTitle(): void {
  effect(() => {
    document.documentElement.dataset['theme'] = settings.value.theme;
  });
  effect(() => {
    language.value = languageFor(settings.value.language, navigator.languages);
    document.documentElement.lang = language.value;
  });
  effect(() => {
    document.title = isLost.value ? say('page.lost') : pageTitle(live.value);
  });
}
