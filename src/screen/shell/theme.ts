// Puts the chosen theme and the page's title where CSS and the browser's tab find them.
import { effect } from '@preact/signals';
import { isLost, live, settings } from '../client/store.ts';
import { pageTitle } from '../words/alarm-words.ts';

export function followThemeAndTitle(): void {
  effect(() => {
    document.documentElement.dataset['theme'] = settings.value.theme;
  });
  effect(() => {
    document.title = isLost.value ? '✕ Connection lost – Panwarden' : pageTitle(live.value);
  });
}
