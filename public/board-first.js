// Runs before the Barn board's page is painted: the reading level that this child has chosen.
(() => {
  let level = null;
  try {
    level = sessionStorage.getItem('pailside.level');
  } catch {
    // A browser that keeps nothing shows the short words.
  }
  document.documentElement.dataset.level = level === 'older' ? 'older' : 'younger';
})();
