// Makes forms bear a bad connection. Nothing here is needed to use a page: every form works without it.
// What is typed is kept on this device until it is saved; what can't be sent waits and is sent later, in its order, once.
// What is private, such as a registration, is never stored on the device: it waits in this page alone.

const bearer = document.querySelector('meta[name="bearer"]')?.content ?? '';
const DRAFT = `axlecause:${bearer}:draft:`;
const QUEUE = `axlecause:${bearer}:queue`;
const EVERY = 15000;
const told = document.getElementById('kept');

function stored(key, otherwise) {
  try {
    return JSON.parse(localStorage.getItem(key)) ?? otherwise;
  } catch {
    return otherwise;
  }
}

function store(key, value) {
  try {
    if (value === null) {
      localStorage.removeItem(key);
    } else {
      localStorage.setItem(key, JSON.stringify(value));
    }
    return true;
  } catch {
    return false;
  }
}

function tell(text, strong) {
  told.textContent = '';
  if (text) {
    const line = document.createElement('p');
    if (strong) {
      const bold = document.createElement('b');
      bold.textContent = `${strong} `;
      line.append(bold);
    }
    line.append(text);
    told.append(line);
  }
}

// Private fields of entries that wait, by the id of their entry.
const secrets = new Map();

// Whether what was private in an entry went with the page that it was typed on.
function isStripped(entry) {
  return entry.withheld && !secrets.has(entry.entry);
}

function waiting() {
  const queue = stored(QUEUE, []);
  if (queue.length > 0) {
    const entries = queue.length === 1 ? 'One entry waits' : `${queue.length} entries wait`;
    const goOn = queue.some(isStripped)
      ? 'A registration that was typed went with its page: it is never stored on this device.'
      : queue.some((entry) => entry.withheld)
        ? 'Leave this page open until then: the registration is not stored on this device.'
        : 'You can go on.';
    tell(`${entries} on this device and will be sent when the connection is back. ${goOn}`, 'Not saved yet.');
  }
  return queue.length;
}

// What is typed

function fieldsOf(form) {
  return [...form.elements].filter(
    (field) => field.name && field.type !== 'hidden' && field.type !== 'file' && !('private' in field.dataset) && !('large' in field.dataset));
}

function keep(form) {
  const values = {};
  for (const field of fieldsOf(form)) {
    const chosen = field.type === 'radio' || field.type === 'checkbox';
    if (!chosen) {
      values[field.name] = [field.value];
    } else if (field.checked) {
      (values[field.name] ??= []).push(field.value);
    } else {
      values[field.name] ??= [];
    }
  }
  store(DRAFT + form.dataset.keep, { values, entry: form.elements.entry?.value });
}

function restore(form) {
  const draft = stored(DRAFT + form.dataset.keep, null);
  if (!draft) {
    return;
  }
  for (const field of fieldsOf(form)) {
    const kept = draft.values[field.name];
    if (kept) {
      if (field.type === 'radio' || field.type === 'checkbox') {
        field.checked = kept.includes(field.value);
      } else {
        field.value = kept[0];
      }
    }
  }
  if (draft.entry && form.elements.entry) {
    form.elements.entry.value = draft.entry;
  }
  for (let around = form.closest('details'); around; around = around.parentElement.closest('details')) {
    around.open = true;
  }
}

for (const form of document.querySelectorAll('form[data-keep]')) {
  restore(form);
  form.addEventListener('input', () => keep(form));
}

// What is sent

async function send(entry) {
  const body = new URLSearchParams([...new URLSearchParams(entry.body), ...(secrets.get(entry.entry) ?? [])]);
  body.set('token', document.querySelector('meta[name="form-token"]').content);
  body.set('ago', String(Math.max(0, Math.round((Date.now() - entry.at) / 1000))));
  const answer = await fetch(entry.action, {
    method: 'POST',
    body,
    headers: { Accept: 'text/html' },
    credentials: 'same-origin',
    signal: AbortSignal.timeout?.(30000),
  });
  if (answer.status >= 500 || answer.status === 429 || answer.status === 408) {
    throw new Error('not now');
  }
  return answer;
}

async function refusal(answer) {
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  return page.getElementById('problem')?.innerText.trim() ?? `Refused (${answer.status}).`;
}

// Entries that were sent off by this page, not by one before it.
const here = new Set();

// Where an entry leads: the part of the page that its form names; another address each time, so that it is loaded anew.
function follow(url, entry) {
  const there = new URL(url);
  there.searchParams.set('of', entry.entry.slice(0, 8));
  there.hash = entry.then ?? '';
  return there.href;
}

// Whether somebody is in the middle of writing something that isn't sent yet.
function typing() {
  const field = document.activeElement;
  const form = field?.form;
  return form?.method === 'post' && !here.has(form.elements.entry?.value)
    && field.matches('textarea, select, input:not([type="radio"]):not([type="checkbox"])');
}

let busy = false;

async function flush() {
  if (busy) {
    return;
  }
  busy = true;
  try {
    let queue = stored(QUEUE, []);
    let shown = null;
    let own = false;
    let sent = false;
    let stripped = false;
    while (queue.length > 0) {
      const entry = queue[0];
      const answer = await send(entry);
      if (answer.status === 401) {
        tell('Your entries stay on this device. Sign in again to send them.', 'Not saved yet.');
        return;
      }
      queue = stored(QUEUE, []).filter((other) => other.at !== entry.at || other.body !== entry.body);
      store(QUEUE, queue);
      // An entry that lost what was private in it, and is another one to the service, arrived before with it.
      const arrivedBefore = isStripped(entry) && answer.status === 409;
      if (answer.ok || arrivedBefore) {
        if (entry.keep) {
          store(DRAFT + entry.keep, null);
        }
        sent = true;
        stripped ||= isStripped(entry) && !arrivedBefore;
        secrets.delete(entry.entry);
        shown = arrivedBefore ? shown : follow(answer.url, entry);
        own = here.has(entry.entry);
      } else {
        tell(await refusal(answer), 'Not saved.');
        return;
      }
    }
    if (shown && own && !typing()) {
      location.assign(shown);
    } else if (sent) {
      const missing = stripped ? 'The registration went with the page that it was typed on. ' : '';
      tell(`Every entry that waited is with the service now. ${missing}`, 'Saved.');
      if (shown) {
        const link = document.createElement('a');
        link.href = shown;
        link.textContent = 'See what follows';
        told.lastChild.append(link);
      }
    }
  } catch {
    waiting();
  } finally {
    busy = false;
    for (const button of document.querySelectorAll('form[data-send] button[disabled]:not([hidden])')) {
      button.disabled = false;
    }
  }
}

for (const form of document.querySelectorAll('form[data-send]')) {
  form.addEventListener('submit', (event) => {
    const fields = new URLSearchParams(new FormData(form));
    if (event.submitter?.name) {
      fields.set(event.submitter.name, event.submitter.value);
    }
    const entry = form.elements.entry.value;
    const secret = [...form.elements].filter((field) => 'private' in field.dataset && field.value);
    secret.forEach((field) => fields.delete(field.name));
    secrets.set(entry, secret.map((field) => [field.name, field.value]));
    // The last tap on a form counts as long as it waits.
    const others = stored(QUEUE, []).filter((other) => other.entry !== entry);
    const kept = store(QUEUE, [
      ...others,
      {
        action: form.getAttribute('action'),
        body: fields.toString(),
        entry,
        keep: form.dataset.keep,
        then: form.dataset.then,
        withheld: secret.length > 0,
        at: Date.now(),
      },
    ]);
    if (!kept) {
      return; // no room on this device: the browser sends the form itself
    }
    here.add(entry);
    event.preventDefault();
    for (const button of form.querySelectorAll('button')) {
      button.disabled = true;
    }
    tell('It is kept on this device until it is saved.', 'Saving …');
    flush();
  });
}

for (const input of document.querySelectorAll('input[type="file"][data-into]')) {
  input.closest('[data-script]').hidden = false;
  input.addEventListener('change', async () => {
    if (input.files.length > 0) {
      document.getElementById(input.dataset.into).value = await input.files[0].text();
    }
  });
}

// What is still being done is looked at again and again, and shown in place.

const polled = document.querySelector('[data-poll]');

// While it goes on only the parts that it names change, and none in which somebody is.
function show(now, goesOn) {
  if (!goesOn) {
    polled.replaceChildren(...now.childNodes);
    return;
  }
  for (const id of now.dataset.poll.split(' ')) {
    const part = document.getElementById(id);
    const fresh = now.querySelector(`#${id}`);
    if (part && fresh && !part.contains(document.activeElement)) {
      part.replaceWith(fresh);
    }
  }
}

async function look() {
  let goesOn = true;
  try {
    const answer = await fetch(location.href, { headers: { Accept: 'text/html' }, credentials: 'same-origin' });
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    const now = answer.ok ? page.getElementById(polled.id) : null;
    if (now) {
      goesOn = 'poll' in now.dataset;
      show(now, goesOn);
    }
  } catch {
    // no connection: the next look may have one
  }
  if (goesOn) {
    setTimeout(look, 1500);
  }
}

if (polled) {
  setTimeout(look, 1500);
}

addEventListener('online', flush);
setInterval(() => {
  if (stored(QUEUE, []).length > 0) {
    flush();
  }
}, EVERY);
if (waiting() > 0) {
  flush();
}
