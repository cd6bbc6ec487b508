// Whether the page is as narrow as a phone, which has room for one alarm above the buttons used in a hurry.
import { signal } from '@preact/signals';

/** As in the style sheets. */
const query = matchMedia('(max-width: 700px)');

export const isNarrow = signal(query.matches);
query.addEventListener('change', () => (isNarrow.value = query.matches));
