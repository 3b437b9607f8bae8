// Which opening is shown until the page has calculated: the example's answer where the example will open, in the units that the
// page will take and only where it will write numbers as in English; else the one without numbers. Keys and rules are those of
// src/app/storage and src/app/format.
(() => {
  const language = navigator.language;
  let units = /-us\b/i.test(language) ? "us" : "metric";
  let opensExample = location.hash.length < 2 && /^en(-(US|GB|CA|AU|NZ))?$/i.test(language);
  try {
    opensExample &&= !localStorage.getItem("noonday.working") && !localStorage.getItem("noonday.visit");
    units = JSON.parse(localStorage.getItem("noonday.units")) ?? units;
  } catch {
    // Storage that cannot be read holds nothing that could open.
  }
  if (opensExample) document.documentElement.dataset.opening = units;
})();
