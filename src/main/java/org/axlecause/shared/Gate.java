package org.axlecause.shared;

import java.lang.reflect.Method;
import org.jspecify.annotations.Nullable;

/** Decides who comes in, before a request's body is read; refuses by {@link RefusedException}. */
public interface Gate {

    /**
     * Admits the bearer of this {@code Authorization} header to the method that answers the route, or refuses. What the
     * bearer may still ask for comes back, null where nothing is counted; with an exceeded quota nobody is admitted.
     */
    @Nullable
    Quota admit(@Nullable String authorization, Class<?> resource, Method method);
}
