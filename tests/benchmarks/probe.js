// What the page sees of a slider's move: the key, the message that leaves, what comes back,
// the new picture, the frame.
picture => {
  const now = () => performance.now();
  const state = { step: null, sockets: new WeakSet(), drag: null };

  const painted = then => requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = then;
    channel.port2.postMessage(null);
  });

  // v1.kernel.websocket.jupyter.org: the count of the offsets, the offsets, then channel, header and the rest.
  const kind = data => {
    if (typeof data === 'string') return JSON.parse(data).header.msg_type;
    const view = new DataView(data);
    const offset = number => Number(view.getBigUint64(8 * (number + 1), true));
    return JSON.parse(new TextDecoder().decode(new Uint8Array(data, offset(1), offset(2) - offset(1)))).msg_type;
  };

  const send = WebSocket.prototype.send;
  WebSocket.prototype.send = function (data) {
    if (!state.sockets.has(this)) {
      state.sockets.add(this);
      const heard = this.onmessage;
      // Noted before it is handled: the picture may be there before another listener is asked.
      this.onmessage = event => {
        const step = state.step;
        if (step && step.left) {
          const type = kind(event.data);
          if (type === 'status' && !step.heard) step.heard = now();
          if (type === 'comm_msg' && !step.answered) step.answered = now();
        }
        return heard.call(this, event);
      };
    }
    if (state.step && state.step.key && !state.step.left) state.step.left = now();
    return send.call(this, data);
  };

  document.addEventListener('keydown', () => {
    if (state.step && !state.step.key) state.step.key = now();
  }, true);
  document.addEventListener('pointermove', () => {
    if (state.drag && !state.drag.over) state.drag.lastMove = now();
  }, true);

  const changed = () => {
    const step = state.step;
    if (step && step.key && !step.changed) {
      step.changed = now();
      painted(() => step.done({
        leaving: step.left - step.key,
        hearing: step.heard - step.left,
        drawing: step.answered - step.heard,
        arriving: step.changed - step.answered,
        painting: now() - step.changed,
        whole: now() - step.key,
      }));
      state.step = null;
    }
    const drag = state.drag;
    if (drag && !drag.waiting) {
      drag.waiting = true;
      painted(() => {
        drag.waiting = false;
        drag.last = now();
        drag.pictures += drag.over ? 0 : 1;
      });
    }
  };

  const isPicture = node => node.matches?.('svg, img') || node.querySelector?.('svg, img');
  new MutationObserver(records => {
    const fresh = records.flatMap(record => record.type === 'attributes' ? [record.target] : [...record.addedNodes])
      .filter(isPicture);
    if (!fresh.length) return;
    const image = fresh.map(node => node.matches('img') ? node : node.querySelector('img')).find(Boolean);
    if (image && !image.complete) image.addEventListener('load', changed, { once: true });
    else changed();
  }).observe(document.querySelector(picture), {
    childList: true, subtree: true, attributes: true, attributeFilter: ['src'],
  });

  window.benchmark = {
    arm: () => { window.benchmark.step = new Promise(done => { state.step = { done }; }); },
    drag: () => { state.drag = { pictures: 0, waiting: false, over: false, lastMove: 0, last: 0 }; },
    stop: () => { state.drag.over = true; },
    dragged: () => ({ pictures: state.drag.pictures, lag: Math.max(0, state.drag.last - state.drag.lastMove) }),
  };
}
