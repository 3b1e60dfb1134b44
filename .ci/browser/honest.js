// Returns "valid" where the sheet stands as valid, "" where it does not, and else what is wrong with that.
(() => {
	const valid = $("banner").textContent === "" && sheet !== "";
	const half = [...document.querySelectorAll("#form input, #form textarea")].find(typed); // a number that is still being typed
	const verdict = document.querySelector("#sheet header")?.checkVisibility() ?? false;
	if ($("sheet").checkVisibility() && verdict !== valid) return "the verdict can be seen, and the sheet is not valid, or the other way";
	if (half && valid) return "a sheet that is valid, and half a number in " + half.id;
	if (half && $("next").textContent === now.words && !$("banner").textContent) return "what is next stands beside half a number in " + half.id;
	if (undone.length > 0) return "what was done waits";
	const fresh = JSON.parse(benchTurn(JSON.stringify({ job }))); // as if the job were opened anew
	if (fresh.job !== job) return "the job is written otherwise when it is read again";
	if (valid && fresh.sheet !== sheet) return "the sheet is that of another job";
	if (!valid && !document.activeElement.closest("[data-at]") && fresh.sheet) return "the sheet of this job is valid, and marked as not";
	if (half) return "";
	const plain = part => { // without what is unfolded or pointed at
		for (const e of part.querySelectorAll("[open], .here, [class='']")) {
			e.removeAttribute("open");
			e.classList.remove("here");
			if (!e.classList.length) e.removeAttribute("class");
		}
		return part;
	};
	for (const part of fresh.form) {
		const shows = plain($(part.id).lastElementChild.cloneNode(true));
		const wants = plain(document.createRange().createContextualFragment(`<div>${part.html}</div>`).firstChild);
		if (!shows.isEqualNode(wants)) return "the form shows another " + part.id;
	}
	return valid ? "valid" : "";
})()
