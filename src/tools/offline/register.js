// Added to the built page only. Waits until the page has loaded, so that the first visit is not slowed down.
if ('serviceWorker' in navigator) {
  addEventListener('load', () => {
    navigator.serviceWorker.register('./sw.js').catch((reason) => {
      console.warn('Preweigh will not open without a network:', reason)
    })
  })
}
