/**
 * What we believe: readings trusted, projected or untrusted with a reason, what is learned of the water
 * and its heater, and what heater and air have shown of themselves. Nothing here wants or forbids
 * anything. Start with {@link org.conetender.core.judge.Judge}, then
 * {@link org.conetender.core.judge.Water} and {@link org.conetender.core.judge.Thermal}.
 */
package org.conetender.core.judge;
