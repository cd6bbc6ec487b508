// A signal whose value outlives a reload of its page, for as long as that window or tab is open.
import { effect, signal } from '@preact/signals';
import type { Signal } from '@preact/signals';

/**
 * The value that was kept under `name`, null where there is none. It must be what JSON can hold. Where the browser keeps
 * nothing, the value lives as long as the page.
 */
export function sessionSignal<T>(name: string): Signal<T | null> {
  const held = signal<T | null>(kept(name));
  effect(() => keep(name, held.value));
  return held;
}

function kept<T>(name: string): T | null {
  try {
    return JSON.parse(sessionStorage.getItem(name) ?? 'null') as T | null;
  } catch {
    return null; // Storage that is switched off throws, and so does text that another program left.
  }
}

function keep(name: string, value: unknown): void {
  try {
    if (value === null) sessionStorage.removeItem(name);
    else sessionStorage.setItem(name, JSON.stringify(value));
  } catch {
    // It then lives as long as the page.
  }
}
