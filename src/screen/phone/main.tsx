// Starts the page for phones: lets the phone in, connects, and shows the pans.
import { render } from 'preact';
import { socketLink } from '../client/socket-link.ts';
import { connect } from '../client/store.ts';
import { keepAwake } from '../shell/keep-awake.ts';
import { followThemeAndTitle } from '../shell/theme.ts';
import { allowSoundOnFirstTouch } from '../sound/player.ts';
import { soundTheCalls } from '../sound/sounding.ts';
import { invitationIn, notLetIn } from './let-in.ts';
import { hearingWhatItMay } from './may-answer.ts';
import { PhoneApp } from './phone-app.tsx';
import { Welcome } from './welcome.tsx';
import '../styles/theme.css';
import '../styles/frame.css';
import '../styles/controls.css';
import '../styles/alarms.css';
import './phone.css';

function begin(): void {
  connect(hearingWhatItMay(socketLink({ enter: () => Promise.resolve(null), shutOut: notLetIn })));
  show(<PhoneApp />);
}

function show(page: Parameters<typeof render>[0]): void {
  const root = document.querySelector('#screen');
  if (root !== null) render(page, root);
}

followThemeAndTitle();
allowSoundOnFirstTouch();
soundTheCalls();
// What a page over plain HTTP may not do, it is not asked for.
if (isSecureContext) keepAwake();

const token = invitationIn(location.hash);
if (token === null) begin();
else show(<Welcome token={token} begin={begin} />);
