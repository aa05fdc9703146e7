// Runs in the page's own world before its scripts, and gives it what the preload exposes. Values cross as JSON.
(() => {
  let count = 0;
  const callOf =
    (key, name) =>
    (...given) =>
      new Promise((resolve, reject) => {
        count += 1;
        const answer = `standin-answer-${count}`;
        const answered = ({ detail }) => {
          const { value, error } = JSON.parse(detail);
          if (error === undefined) resolve(value);
          else reject(new Error(error));
        };
        addEventListener(answer, answered, { once: true });
        dispatchEvent(new CustomEvent("standin-call", { detail: JSON.stringify({ key, name, given, answer }) }));
      });
  addEventListener("standin-expose", ({ detail }) => {
    const { key, names } = JSON.parse(detail);
    const exposed = Object.fromEntries(names.map((name) => [name, callOf(key, name)]));
    Object.defineProperty(window, key, { value: Object.freeze(exposed), enumerable: true });
  });
})();
