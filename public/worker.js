// Starts the page's own program once more, beside the page. The first message brings its address and its compiled form, so that
// nothing is fetched or compiled twice. What cannot be loaded is thrown where the page hears of it.
self.onmessage = ({ data }) => {
  self.onmessage = null;
  import(data.address)
    .then((program) => program.default({ module_or_path: data.compiled }))
    .catch((reason) => setTimeout(() => { throw reason; }));
};
