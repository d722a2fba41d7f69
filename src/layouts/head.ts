// What every frame's head needs: faces of type and the sheets of style, in their order.
import '@fontsource/alfa-slab-one/latin-400.css';
import '@fontsource/andika/latin-400.css';
import '@fontsource/andika/latin-700.css';
import '../styles/tokens.css';
import '../styles/base.css';
