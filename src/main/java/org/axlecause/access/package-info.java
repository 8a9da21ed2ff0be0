/** Tenants, sites, keys, roles; who may see and do what. */
@NullMarked
package org.axlecause.access;

import org.jspecify.annotations.NullMarked;
