/** Where a device keeps that it has answered the offer of a first bead, or turned it down. */
export const FIRST_BEAD_KEY = "toeline-first-bead";

/**
 * The server cannot know what a device has answered, so it writes the offer for all; this runs before anything is painted, and
 * hides it where it was answered or where nothing is kept. An offer that only came with the page's code would push the list down
 * under the thumb. As text, because it stands in the page itself.
 */
export const askedOnceScript = `(()=>{
let answered=true;
try{answered=localStorage.getItem("${FIRST_BEAD_KEY}")!==null}catch{}
if(answered)document.documentElement.dataset.firstBead="answered"
})()`;
