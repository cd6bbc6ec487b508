// Phones in the same network: their page switched on, one let in by a code, what each may do, and put out at one press.
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { encode } from 'uqr';
import type { PhoneInvitation, PhoneListed, PhonesView } from '../../protocol/phone-messages.ts';
import { ask, said, sayDone } from '../client/store.ts';
import type { Wish } from '../client/types.ts';
import { dayAndTime } from '../words/clock.ts';

const LOOK_MS = 1000;

/** The code that a phone's camera reads: dark on light in every theme, with the quiet edge that it needs. */
function Code({ text }: { text: string }): JSX.Element {
  const { data, size } = encode(text, { ecc: 'M', border: 4 });
  const path = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : []))).join('');
  return (
    <svg class="code" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={say('phones.code')}>
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" shape-rendering="crispEdges" />
    </svg>
  );
}

/** The address to type, its code in groups that the eye can keep; they are no part of it. */
function Typed({ url }: { url: string }): JSX.Element {
  const codeAt = url.indexOf('=') + 1;
  return (
    <b class="invite-url">
      {url.slice(0, codeAt)}
      {url
        .slice(codeAt)
        .match(/.{1,4}/g)
        ?.map((group, place) => (
          <span key={place}>{group}</span>
        ))}
    </b>
  );
}

interface PhoneRowProps {
  phone: PhoneListed;
  wish: Shown['wish'];
}

function PhoneRow({ phone, wish }: PhoneRowProps): JSX.Element {
  const { id, name, may_answer, connected, let_in } = phone;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{connected ? say('phones.looks') : say('phones.away')}</td>
      <td>{say('phones.let_in', { time: dayAndTime(let_in) })}</td>
      <td>
        <label class="check">
          <input
            type="checkbox"
            checked={may_answer}
            onChange={(event) => wish({ phone_change: { id, may_answer: event.currentTarget.checked } })}
          />{' '}
          {say('phones.may')}
        </label>
      </td>
      <td>
        <button
          type="button"
          aria-label={say('phones.put_out_which', { name })}
          onClick={() => wish({ phone_out: { id } }, say('phones.is_out', { name }))}
        >
          {say('phones.put_out')}
        </button>
      </td>
    </tr>
  );
}

interface Shown {
  view: PhonesView | null;
  /** `done` is said once it took effect. */
  wish: (wish: Wish, done?: string) => void;
}

/** Looked at again every second, for phones come and go. */
function useView(): Shown {
  const [view, setView] = useState<PhonesView | null>(null);
  const wish = (what: Wish, done?: string): void =>
    void ask(what).then(
      (data) => {
        setView(data as PhonesView);
        if (done !== undefined) sayDone(done);
      },
      (error: Error) => (said.value = { good: false, sentence: error.message }),
    );
  useEffect(() => {
    wish({ phones: true });
    const timer = setInterval(() => wish({ phones: true }), LOOK_MS);
    return () => clearInterval(timer);
  }, []);
  return { view, wish };
}

/** The code goes once it was used or is too old, as the view that came last says. */
function Invite({ view }: { view: PhonesView }): JSX.Element {
  const [invitation, setInvitation] = useState<PhoneInvitation | null>(null);
  useEffect(() => {
    if (!view.invites) setInvitation(null);
  }, [view]);
  const invite = (): void =>
    void ask({ phone_invite: true }).then(
      (data) => setInvitation(data as PhoneInvitation),
      (error: Error) => (said.value = { good: false, sentence: error.message }),
    );
  return (
    <div class="invite">
      <button type="button" class="main-button" onClick={invite}>
        {invitation === null ? say('phones.invite') : say('phones.another')}
      </button>
      {invitation !== null && (
        <div class="invitation">
          <Code text={invitation.url} />
          <p>
            {say('phones.point', { minutes: String(invitation.minutes) })} <Typed url={invitation.url} />
          </p>
        </div>
      )}
    </div>
  );
}

export function PhonesPanel(): JSX.Element | null {
  const { view, wish } = useView();
  if (view === null) return null;
  const { on, addresses, url, trouble, phones } = view;
  return (
    <section class="panel" aria-labelledby="phones">
      <h2 id="phones">{say('phones.title')}</h2>
      <p>{say('phones.text')}</p>
      <label class="check">
        <input
          type="checkbox"
          checked={on}
          onChange={(event) => wish({ phones_switch: { on: event.currentTarget.checked, address: null } })}
        />{' '}
        {say('phones.show')}
      </label>
      {trouble !== null && <p class="problem">✕ {hostWords(trouble)}</p>}
      {url !== null && (
        <>
          {addresses.length > 1 && (
            <label>
              <span>{say('phones.network')}</span>
              <select
                value={addresses.find(({ address }) => url.includes(`//${address}:`))?.address}
                onChange={(event) => wish({ phones_switch: { on: true, address: event.currentTarget.value } })}
              >
                {addresses.map(({ address, name }) => (
                  <option key={address} value={address}>
                    {name}, {address}
                  </option>
                ))}
              </select>
            </label>
          )}
          <Invite view={view} />
        </>
      )}
      {phones.length > 0 && (
        <table>
          <tbody>
            {phones.map((phone) => (
              <PhoneRow key={phone.id} phone={phone} wish={wish} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
