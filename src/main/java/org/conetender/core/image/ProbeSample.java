package org.conetender.core.image;

/**
 * The latest answer of one probe.
 *
 * @param probe the probe's id
 * @param reading what it said
 * @param ageMs how long ago its conversion ended, in milliseconds; its waiting time when it never answered
 */
public record ProbeSample(String probe, Reading reading, long ageMs) {}
