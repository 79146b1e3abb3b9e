"use strict";
(function () {
  const root = document.documentElement;
  const view = document.getElementById("view");
  const stage = document.getElementById("stage");
  const left = document.getElementById("left");
  const right = document.getElementById("right");
  const wipe = document.getElementById("wipe");
  const about = document.getElementById("about");
  const differs = document.getElementById("differs");
  const readings = JSON.parse(document.getElementById("readings").textContent);
  root.classList.add("js");

  function show() {
    for (const panel of stage.querySelectorAll(".panel")) {
      panel.classList.toggle("left", panel.dataset.option === left.value);
      panel.classList.toggle("right", panel.dataset.option === right.value);
    }
    document.getElementById("left-name").textContent = "◀\u00a0" + nameOf(left);
    document.getElementById("right-name").textContent = nameOf(right) + "\u00a0▶";
    document.getElementById("left-flaw").textContent = flawOf("left");
    document.getElementById("right-flaw").textContent = flawOf("right");
    slide();
  }

  function flawOf(side) {
    const flaw = stage.querySelector(".panel." + side + " .flaw");
    return flaw ? flaw.textContent : "";
  }

  function nameOf(select) {
    return select.selectedOptions[0].textContent;
  }

  function slide() {
    stage.style.setProperty("--wipe", wipe.value + "%");
    wipe.setAttribute("aria-valuetext", wipe.value + " % " + nameOf(left) + ", the rest " + nameOf(right));
  }

  function keepDividerInSight() {
    view.scrollLeft = (stage.offsetWidth * wipe.value) / 100 - view.clientWidth / 2;
  }

  function light() {
    root.classList.toggle("night", document.getElementById("night").checked);
  }

  function tell(item) {
    for (const pressed of stage.querySelectorAll('[aria-pressed="true"]')) pressed.removeAttribute("aria-pressed");
    item.setAttribute("aria-pressed", "true");
    frame(item);
    const option = item.closest(".panel").dataset.option;
    const words = readings[option][item.dataset.item];
    about.classList.add("told");
    about.querySelector("h3").textContent = item.getAttribute("aria-label");
    about.querySelector("p").textContent = words || "";
  }

  // The frame stands last in the picture, so above the item's neighbours and the glareshield.
  function frame(item) {
    for (const old of stage.querySelectorAll(".frame")) old.remove();
    const picture = item.ownerSVGElement;
    const outline = document.createElementNS(picture.namespaceURI, "path");
    const m = picture.getScreenCTM().inverse().multiply(item.getScreenCTM());
    outline.setAttribute("transform", "matrix(" + [m.a, m.b, m.c, m.d, m.e, m.f].join(" ") + ")");
    outline.setAttribute("d", item.dataset.outline);
    outline.setAttribute("class", "frame");
    picture.append(outline);
  }

  function follow(event) {
    const box = stage.getBoundingClientRect();
    const share = (event.clientX - box.left) / box.width;
    wipe.value = Math.round(100 * Math.min(1, Math.max(0, share)));
    slide();
  }

  // On paper each panel stands by day and by night: copies in the colours of the night, with what they share.
  function addNight() {
    const parts = [document.getElementById("shared"), ...stage.querySelectorAll(".panel")];
    const copies = parts.map(function (part) { return part.outerHTML; }).join("");
    const renamed = copies.replace(/(\bid="|href="#|url\(#)/g, "$1night-");
    const box = document.getElementById("by-night");
    box.innerHTML = renamed;
    for (const caption of box.querySelectorAll("figcaption")) caption.append(", by night");
    for (const more of document.querySelectorAll("details:not([open])")) {
      more.open = true;
      more.dataset.opened = "";
    }
  }

  function removeNight() {
    document.getElementById("by-night").textContent = "";
    for (const more of document.querySelectorAll("details[data-opened]")) {
      more.open = false;
      delete more.dataset.opened;
    }
  }

  const edge = document.getElementById("edge");
  edge.addEventListener("pointerdown", function (event) {
    edge.setPointerCapture(event.pointerId);
    edge.addEventListener("pointermove", follow);
    event.preventDefault();
  });
  for (const end of ["pointerup", "pointercancel"]) {
    edge.addEventListener(end, function () { edge.removeEventListener("pointermove", follow); });
  }
  stage.addEventListener("click", function (event) {
    const item = event.target.closest(".item");
    if (item) tell(item);
  });
  stage.addEventListener("keydown", function (event) {
    const item = event.target.closest(".item");
    if (item && (event.key === "Enter" || event.key === " ")) {
      tell(item);
      event.preventDefault();
    }
  });
  for (const control of [left, right]) control.addEventListener("change", show);
  for (const radio of document.querySelectorAll('input[name="light"]')) radio.addEventListener("change", light);
  wipe.addEventListener("input", function () {
    slide();
    keepDividerInSight();
  });
  document.getElementById("swap").addEventListener("click", function () {
    const was = left.value;
    left.value = right.value;
    right.value = was;
    show();
  });
  const size = document.getElementById("size");
  size.addEventListener("click", function () {
    const large = root.classList.toggle("large");
    size.setAttribute("aria-pressed", String(large));
    keepDividerInSight();
  });
  function onlyDiffering() {
    root.classList.toggle("only-differing", differs.checked);
  }
  differs.checked = window.matchMedia("(max-width: 40rem)").matches;
  differs.addEventListener("change", onlyDiffering);
  window.addEventListener("beforeprint", addNight);
  window.addEventListener("afterprint", removeNight);
  document.getElementById("print").addEventListener("click", function () { window.print(); });
  onlyDiffering();
  light();
  show();
})();
