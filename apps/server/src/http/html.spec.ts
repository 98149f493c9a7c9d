import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { html } from './html.js';

describe("HTML made of other people's texts", () => {
  it('escapes whatever is put in, between tags and in quoted attributes', () => {
    const hostile = `"><script>alert('1')</script>&amp;`;
    const page = html`<p title="${hostile}">${hostile}</p>`;
    expect(page.text).toBe(
      '<p title="&quot;&gt;&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;&amp;amp;">&quot;&gt;&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;&amp;amp;</p>',
    );
  });

  it('lets no text add a tag or leave an attribute', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const inside = html`${text}`.text;
        expect(inside).not.toMatch(/[<>"']/);
        const back = inside
          .replaceAll('&lt;', '<')
          .replaceAll('&gt;', '>')
          .replaceAll('&quot;', '"')
          .replaceAll('&#39;', "'")
          .replaceAll('&amp;', '&');
        expect(back).toBe(text);
      }),
    );
  });

  it('puts HTML of its own in as it is, a list of it too, and nothing for null', () => {
    const cells = ['a', '<'].map((cell) => html`<i>${cell}</i>`);
    expect(html`${cells}${null}${html`<b>${1}</b>`}`.text).toBe('<i>a</i><i>&lt;</i><b>1</b>');
  });
});
