package org.axlecause.facts;

/**
 * The case is judged by another published policy version from here on.
 *
 * @param policy name of the policy
 * @param version its version
 * @param reason why
 * @param by who answers for it
 */
public record PolicyAdopted(String policy, int version, String reason, String by) implements Entry {}
