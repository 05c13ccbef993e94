/**
 * What a person is told, and when again. No cause is sought here and no message is sent; guards find
 * the causes, the face words them. Start with {@link org.conetender.core.alarm.AlarmKind}, which holds
 * every alarm there is, then {@link org.conetender.core.alarm.Alarms} for its states,
 * {@link org.conetender.core.alarm.Follow} for what belongs to one incident, and {@code Gate} for how often a
 * telephone may ring.
 */
package org.conetender.core.alarm;
