import './theme/index.ts';
import { render } from 'preact';
import { Frame } from './frame/index.tsx';
import { startApp } from './frame/start.ts';
import { getHost } from './host/index.ts';
import { followTheme } from './theme/index.ts';

followTheme();
startApp(getHost()).then(() => {
  render(<Frame />, document.getElementById('app')!);
});
