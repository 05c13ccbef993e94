/**
 * Pictures of a forecast and of a batch, drawn by a few plain shapes onto SVG or PNG.
 * Nothing is reckoned here that core.hatch has not said, and no window is ever opened.
 * Start with {@link org.conetender.app.plot.HatchPicture}, then {@link org.conetender.app.plot.Pen}.
 */
package org.conetender.app.plot;
