// Starts the screen: chooses the link, connects, and puts the page up.
import { render } from 'preact';
import { socketLink } from './client/socket-link.ts';
import { connect } from './client/store.ts';
import { App } from './shell/app.tsx';
import { keepAwake } from './shell/keep-awake.ts';
import { listenForKeys } from './shell/keys.ts';
import { followAddress } from './shell/routes.ts';
import { followThemeAndTitle } from './shell/theme.ts';
import { allowSoundOnFirstTouch } from './sound/player.ts';
import { showSignsOfLife } from './sound/sign-of-life.ts';
import { soundTheCalls } from './sound/sounding.ts';
import { tellTheCalls } from './sound/telling.ts';
import './styles/theme.css';
import './styles/frame.css';
import './styles/controls.css';
import './styles/pans.css';
import './styles/explain.css';
import './styles/alarms.css';
import './styles/pages.css';
import './styles/notebook.css';
import './styles/plan.css';
import './styles/setup.css';

connect(window.panwarden ?? socketLink());
followAddress();
followThemeAndTitle();
listenForKeys();
allowSoundOnFirstTouch();
soundTheCalls();
tellTheCalls();
showSignsOfLife();
keepAwake();

const root = document.querySelector('#screen');
if (root !== null) render(<App />, root);
