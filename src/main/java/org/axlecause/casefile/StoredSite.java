package org.axlecause.casefile;

import org.axlecause.access.Site;
import org.jspecify.annotations.Nullable;

/**
 * A site that a case names.
 *
 * @param site the site
 * @param prices version of its newest price list; null where it has none
 */
record StoredSite(Site site, @Nullable Integer prices) {}
