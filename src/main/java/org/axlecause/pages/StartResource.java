package org.axlecause.pages;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.axlecause.access.Needs;
import org.axlecause.shared.Page;

/** The page that people begin at. */
@Page
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class StartResource {

    private final Frames frames;

    StartResource(Frames frames) {
        this.frames = frames;
    }

    @GET
    @Needs
    public String start() {
        return Pages.start(frames.of("start")).render();
    }
}
