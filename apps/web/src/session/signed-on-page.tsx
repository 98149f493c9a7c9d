import { useLocation } from 'preact-iso';
import { useEffect } from 'preact/hooks';
import { Page } from '../shell/page.js';
import { tell } from './fresh-sign-on.js';
import { SignOnProblem } from './sign-on-problem.js';

/** Where a sign-on ends: it tells the page that waits for it, and closes the window that was opened for it. */
export function SignedOnPage() {
  const { query } = useLocation();
  const { id, problem } = query;
  useEffect(() => {
    if (id === undefined && problem === undefined) return;
    tell({ ...(id === undefined ? {} : { id }), ...(problem === undefined ? {} : { problem }) });
    if (window.opener !== null || window.name !== '') window.close();
  }, [id, problem]);
  return (
    <Page title="The sign-on">
      {problem === undefined ? <p>Done. You may close this window.</p> : <SignOnProblem code={problem} />}
      <p>
        <a href="/you">Go to your own page</a>
      </p>
    </Page>
  );
}
